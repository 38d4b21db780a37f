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
  readonly stamps: Map<string, HTMLCanvasElement>;
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

  constructor(canvas: HTMLCanvasElement, again: () => void) {
    this.canvas = canvas;
    this.again = again;
  }

  show(layers: readonly Layer[], theme: Theme, swatches: Swatches): void {
    if (theme !== this.theme || swatches !== this.swatches) this.drawn.clear();
    const same = (l: Layer, i: number): boolean => l.picture === this.layers[i]?.picture;
    if (theme !== this.theme || !layers.every(same)) {
      this.whole = null;
      this.sharp = null;
    }
    this.theme = theme;
    this.swatches = swatches;
    this.layers = layers;
    for (const picture of this.drawn.keys())
      if (!layers.some((l) => l.picture === picture)) this.drawn.delete(picture);
  }

  /**
   * Paints one frame at this stand. `hidpi` is device pixels to the CSS pixel. While `moving`, what is
   * already painted is stretched; the frame after the last is painted anew and sharp.
   */
  paint(stand: Stand, w: Window, hidpi: number, moving: boolean): void {
    const ctx = this.canvas.getContext("2d");
    if (!ctx || !this.theme) return;
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
    const mid = {
      x: ((w.left + w.right) / 2) * hidpi,
      y: ((w.top + w.bottom) / 2) * hidpi,
    };
    const blurred = moving && this.whole && (many || !this.hasNear(stand.scale));
    if (blurred && this.whole) this.stretchWhole(ctx, this.whole, stand, mid, hidpi);
    else this.paintLayers(ctx, stand, mid, hidpi, moving);
    ctx.globalAlpha = 1;
    ctx.restore();
    this.sharp = moving ? null : { stand, w, mid, hidpi };
  }

  /** About how many blocks the window shows. */
  private inSight(stand: Stand, w: Window): number {
    const reach = (this.layers[0]?.reach ?? 1) * stand.scale;
    return ((w.right - w.left) * (w.bottom - w.top)) / (2 * reach * reach);
  }

  private paintLayers(ctx: Ctx, stand: Stand, mid: Pixel, hidpi: number, moving: boolean): void {
    for (const layer of this.layers) {
      const rung = this.rungOf(layer, stand.scale, moving);
      const drawn = this.drawingOf(layer, rung);
      const stretch = (stand.scale * hidpi) / rung;
      const { picture } = layer;
      // The drawing's origin is the upper left corner of its picture.
      const left = mid.x + (picture.left - stand.x) * stand.scale * hidpi;
      const top = mid.y - (picture.bottom + picture.height - stand.y) * stand.scale * hidpi;
      ctx.setTransform(stretch, 0, 0, stretch, left, top);
      ctx.globalAlpha = layer.opacity ?? 1;
      this.paintLayer(ctx, drawn, { stretch, left, top, rung, hidpi });
    }
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

  private paintLayer(ctx: Ctx, drawn: Drawn, at: Frame): void {
    const { width, height } = this.canvas;
    const reach = drawn.layer.reach * at.rung * at.stretch;
    const options = { drawing: drawn.drawing, ready: this.again };
    paintOps(ctx, drawn.drawing.ops, {
      ...options,
      stamp: (c, op) => {
        const x = at.left + op.matrix[4] * at.stretch;
        const y = at.top + op.matrix[5] * at.stretch;
        if (x + reach < 0 || y + reach < 0 || x - reach > width || y - reach > height) return;
        const side = 2 * reach;
        c.save();
        c.transform(...six(op.matrix));
        if (side > LARGEST) paintOps(c, drawn.drawing.stamps[op.of] ?? [], options);
        else this.stampDown(c, drawn, op, at);
        c.restore();
      },
    });
  }

  private stampDown(ctx: Ctx, drawn: Drawn, op: Extract<Op, { op: "use" }>, at: Frame): void {
    const half = drawn.layer.reach * at.rung + 3;
    let stamp = drawn.stamps.get(op.of);
    if (!stamp) {
      stamp = document.createElement("canvas");
      const size = Math.ceil(2 * half * at.hidpi);
      stamp.width = size;
      stamp.height = size;
      const own = stamp.getContext("2d");
      if (!own) return;
      own.setTransform(at.hidpi, 0, 0, at.hidpi, size / 2, size / 2);
      const forget = (): void => {
        drawn.stamps.delete(op.of);
        this.again();
      };
      paintOps(own, drawn.drawing.stamps[op.of] ?? [], { drawing: drawn.drawing, ready: forget });
      drawn.stamps.set(op.of, stamp);
    }
    const size = stamp.width / at.hidpi;
    ctx.drawImage(stamp, -size / 2, -size / 2, size, size);
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

interface Frame {
  readonly stretch: number;
  readonly left: number;
  readonly top: number;
  readonly rung: number;
  readonly hidpi: number;
}

/** The next scale at which stamps are kept, at or above this one. */
const rungFor = (scale: number): number =>
  RUNG ** Math.ceil(Math.log(scale) / Math.log(RUNG) - 1e-9);
