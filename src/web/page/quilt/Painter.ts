import type { Length } from "../../../core/measure/unit.ts";
import { type Drawing, draw, type Op } from "../../../core/picture/draw.ts";
import type { Picture } from "../../../core/picture/marks.ts";
import type { Swatches } from "../../../core/picture/swatch.ts";
import type { Theme } from "../../../core/picture/theme.ts";
import { paintOps, six } from "./paint.ts";
import type { Stand, Window } from "./stand.ts";

/** One picture laid over the other: the quilt, what is lit, the cut piece. */
export interface Layer {
  readonly picture: Picture;
  readonly opacity?: number;
  /** Radius, in the picture's unit, a stamp never reaches beyond. */
  readonly reach: Length;
}

type Ctx = CanvasRenderingContext2D;

/** Stamps are kept at scales a half-step of doubling apart; between them they are stretched. */
const RUNG = Math.SQRT2;
/** A stamp larger than this, in device pixels, is painted stroke by stroke: few are seen then. */
const LARGEST = 900;

/** While moving, stamps are stretched by no more than this. */
const STRETCHED = 4;
/** More blocks in sight than this are moved as one picture. */
const MANY = 60;
/** Milliseconds of a frame that go to stamps which are not there yet. */
const STAMPING = 4;

interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** How the last frame that was painted anew stood. */
interface Sharp {
  readonly stand: Stand;
  readonly w: Window;
  readonly mid: Pixel;
  readonly hidpi: number;
}

/** The whole quilt as last painted, to be moved in one go. */
interface Whole {
  readonly canvas: HTMLCanvasElement;
  readonly picture: Picture;
  /** Device pixels to the picture's unit. */
  readonly scale: number;
}

interface Drawn {
  readonly layer: Layer;
  readonly drawing: Drawing;
  readonly stamps: Map<string, Ctx>;
}

/**
 * Paints the quilt: every kind of block is painted once to a canvas of its own and stamped where it
 * lies, so that a frame costs the blocks in sight and not their patches.
 */
export class Painter {
  private readonly canvas: HTMLCanvasElement;
  private readonly again: () => void;
  private layers: readonly Layer[] = [];
  private theme: Theme | null = null;
  private swatches: Swatches = {};
  private drawn = new Map<Picture, Map<number, Drawn>>();
  private whole: Whole | null = null;
  private sharp: Sharp | null = null;
  private readonly bit = newContext();
  /** Canvases of stamps let go, until the next picture stands: new ones cost as much as painting. */
  private spare: Ctx[] = [];

  constructor(canvas: HTMLCanvasElement, again: () => void) {
    this.canvas = canvas;
    this.again = again;
  }

  show(layers: readonly Layer[], theme: Theme, swatches: Swatches): void {
    const redrawn = theme !== this.theme || swatches !== this.swatches;
    const same = (l: Layer, i: number): boolean => l.picture === this.layers[i]?.picture;
    if (theme !== this.theme || !layers.every(same)) {
      this.whole = null;
      this.sharp = null;
    }
    this.theme = theme;
    this.swatches = swatches;
    this.layers = layers;
    for (const [picture, rungs] of this.drawn) {
      if (!redrawn && layers.some((l) => l.picture === picture)) continue;
      this.drawn.delete(picture);
      for (const { stamps } of rungs.values()) this.spare.push(...stamps.values());
    }
  }

  /**
   * Paints one frame at this stand. `hidpi` is device pixels to the CSS pixel. While `moving`, what is
   * already painted is stretched; the frame after the last is painted anew and sharp. False where
   * stamps were painted and more are wanting: what stood there still stands, and the next frame goes on.
   */
  paint(stand: Stand, w: Window, hidpi: number, moving: boolean): boolean {
    const ctx = this.canvas.getContext("2d");
    if (!ctx || !this.theme) return true;
    const mid = {
      x: ((w.left + w.right) / 2) * hidpi,
      y: ((w.top + w.bottom) / 2) * hidpi,
    };
    if (!moving && !this.stamped(this.framesOf(stand, mid, hidpi, moving))) {
      this.again();
      return false;
    }
    const many = this.inSight(stand, w) > MANY;
    // The first frame of a motion keeps what the last sharp one painted, before it is wiped.
    if (moving && !this.whole && this.sharp) this.keepWhole(this.sharp);
    const { width, height } = this.canvas;
    ctx.setTransform(1, 0, 0, 1, 0, 0);
    ctx.clearRect(0, 0, width, height);
    ctx.save();
    ctx.beginPath();
    ctx.rect(
      w.left * hidpi - 1,
      w.top * hidpi - 1,
      (w.right - w.left) * hidpi + 2,
      (w.bottom - w.top) * hidpi + 2,
    );
    ctx.clip();
    const blurred = moving && this.whole && (many || !this.hasNear(stand.scale));
    if (blurred && this.whole) this.stretchWhole(ctx, this.whole, stand, mid, hidpi);
    else for (const f of this.framesOf(stand, mid, hidpi, moving)) this.paintLayer(ctx, f);
    ctx.globalAlpha = 1;
    ctx.restore();
    this.sharp = moving ? null : { stand, w, mid, hidpi };
    if (!moving) this.spare = [];
    return true;
  }

  /** About how many blocks the window shows. */
  private inSight(stand: Stand, w: Window): number {
    const reach = (this.layers[0]?.reach ?? 1) * stand.scale;
    return ((w.right - w.left) * (w.bottom - w.top)) / (2 * reach * reach);
  }

  /** Every layer, drawn, and where it lies in this frame. */
  private framesOf(stand: Stand, mid: Pixel, hidpi: number, moving: boolean): Frame[] {
    return this.layers.map((layer) => {
      const rung = this.rungOf(layer, stand.scale, moving);
      const { picture } = layer;
      return {
        drawn: this.drawingOf(layer, rung),
        stretch: (stand.scale * hidpi) / rung,
        // The drawing's origin is the upper left corner of its picture.
        left: mid.x + (picture.left - stand.x) * stand.scale * hidpi,
        top: mid.y - (picture.bottom + picture.height - stand.y) * stand.scale * hidpi,
        half: layer.reach * rung,
        hidpi,
      };
    });
  }

  /** Are all stamps in sight there? Those that are not are painted, for a part of a frame. */
  private stamped(frames: readonly Frame[]): boolean {
    const end = performance.now() + STAMPING;
    return frames.every((f) =>
      usesIn(f.drawn.drawing.ops).every((op) => {
        if (f.drawn.stamps.has(op.of) || isLarge(f) || !this.inFrame(op, f)) return true;
        // Drawn on somewhere, a canvas is painted now and not with all the others.
        this.bit.drawImage(this.stampOf(f, op.of).canvas, 0, 0, 1, 1);
        return performance.now() < end;
      }),
    );
  }

  /** The scale a layer is drawn at: sharp; while moving, one that is there already and near enough. */
  private rungOf(layer: Layer, scale: number, moving: boolean): number {
    const sharp = rungFor(scale);
    const near = this.nearRungs(layer, scale);
    return moving && near.length > 0 && !near.includes(sharp) ? Math.max(...near) : sharp;
  }

  private nearRungs(layer: Layer, scale: number): number[] {
    const there = [...(this.drawn.get(layer.picture)?.keys() ?? [])];
    return there.filter((r) => r > scale / STRETCHED && r < scale * STRETCHED);
  }

  private hasNear = (scale: number): boolean =>
    this.layers.every((l) => this.nearRungs(l, scale).length > 0);

  /** Keeps the whole quilt as it was last painted, if all of it was in the window. */
  private keepWhole({ stand, w, mid, hidpi }: Sharp): void {
    const { picture } = this.layers[0];
    const k = stand.scale * hidpi;
    const left = mid.x + (picture.left - stand.x) * k;
    const top = mid.y - (picture.bottom + picture.height - stand.y) * k;
    const [wide, high] = [picture.width * k, picture.height * k];
    const slack = 3 * hidpi;
    if (left < w.left * hidpi - slack || top < w.top * hidpi - slack) return;
    if (left + wide > w.right * hidpi + slack || top + high > w.bottom * hidpi + slack) return;
    const canvas = this.whole?.canvas ?? document.createElement("canvas");
    canvas.width = Math.ceil(wide);
    canvas.height = Math.ceil(high);
    canvas.getContext("2d")?.drawImage(this.canvas, -left, -top);
    this.whole = { canvas, picture, scale: k };
  }

  private stretchWhole(ctx: Ctx, whole: Whole, stand: Stand, mid: Pixel, hidpi: number): void {
    const { picture } = whole;
    const k = stand.scale * hidpi;
    const left = mid.x + (picture.left - stand.x) * k;
    const top = mid.y - (picture.bottom + picture.height - stand.y) * k;
    const stretch = k / whole.scale;
    ctx.setTransform(stretch, 0, 0, stretch, left, top);
    ctx.drawImage(whole.canvas, 0, 0);
  }

  private paintLayer(ctx: Ctx, f: Frame): void {
    const { drawing, layer } = f.drawn;
    const options = { drawing, ready: this.again };
    ctx.setTransform(f.stretch, 0, 0, f.stretch, f.left, f.top);
    ctx.globalAlpha = layer.opacity ?? 1;
    paintOps(ctx, drawing.ops, {
      ...options,
      stamp: (c, op) => {
        if (!this.inFrame(op, f)) return;
        c.save();
        c.transform(...six(op.matrix));
        if (isLarge(f)) paintOps(c, drawing.stamps[op.of] ?? [], options);
        else {
          const stamp = this.stampOf(f, op.of).canvas;
          const size = stamp.width / f.hidpi;
          c.drawImage(stamp, -size / 2, -size / 2, size, size);
        }
        c.restore();
      },
    });
  }

  private inFrame({ matrix }: Use, f: Frame): boolean {
    const reach = f.half * f.stretch;
    const within = (at: number, size: number): boolean => at + reach >= 0 && at - reach <= size;
    const { width, height } = this.canvas;
    return (
      within(f.left + matrix[4] * f.stretch, width) && within(f.top + matrix[5] * f.stretch, height)
    );
  }

  private stampOf({ drawn, half, hidpi }: Frame, of: string): Ctx {
    const there = drawn.stamps.get(of);
    if (there) return there;
    const size = Math.ceil(2 * (half + 3) * hidpi);
    const own = this.spare.pop() ?? newContext();
    // A canvas that is given its size is blank again.
    own.canvas.width = own.canvas.height = size;
    own.setTransform(hidpi, 0, 0, hidpi, size / 2, size / 2);
    const forget = (): void => {
      drawn.stamps.delete(of);
      this.again();
    };
    paintOps(own, drawn.drawing.stamps[of] ?? [], { drawing: drawn.drawing, ready: forget });
    drawn.stamps.set(of, own);
    return own;
  }

  private drawingOf(layer: Layer, rung: number): Drawn {
    const rungs = this.drawn.get(layer.picture) ?? new Map<number, Drawn>();
    this.drawn.set(layer.picture, rungs);
    const there = rungs.get(rung);
    if (there) return there;
    // Two rungs are kept: the one in use, and the one a slow zoom goes back to.
    for (const old of [...rungs.keys()].slice(0, -1)) rungs.delete(old);
    const { theme, swatches } = this;
    const made: Drawn = {
      layer,
      drawing: draw(layer.picture, { theme: theme!, swatches, scale: rung }),
      stamps: new Map(),
    };
    rungs.set(rung, made);
    return made;
  }
}

/** How a drawn layer lies in one frame; `half` is how far a stamp reaches, in the drawing's pixels. */
interface Frame {
  readonly drawn: Drawn;
  readonly stretch: number;
  readonly left: number;
  readonly top: number;
  readonly half: number;
  readonly hidpi: number;
}

type Use = Extract<Op, { op: "use" }>;

const usesIn = (ops: readonly Op[]): Use[] =>
  ops.flatMap((op) => (op.op === "use" ? op : op.op === "group" ? usesIn(op.ops) : []));

const isLarge = (f: Frame): boolean => 2 * f.half * f.stretch > LARGEST;

const newContext = (): Ctx => document.createElement("canvas").getContext("2d") as Ctx;

/** The next scale at which stamps are kept, at or above this one. */
const rungFor = (scale: number): number =>
  RUNG ** Math.ceil(Math.log(scale) / Math.log(RUNG) - 1e-9);
