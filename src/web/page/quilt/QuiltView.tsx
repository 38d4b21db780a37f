import { useEffect, useMemo, useRef } from "react";
import { patchesLit, patchesOfRoles, patchLabel } from "../../../core/answer/say/phrases.ts";
import { wordOfRole, wordsOf } from "../../../core/answer/words/choices.ts";
import { boundingBox } from "../../../core/geometry/index.ts";
import { lengthToInch } from "../../../core/measure/index.ts";
import { quiltPicture } from "../../../core/picture/quilt.ts";
import type { Answered } from "../answers.ts";
import { Said } from "../said.tsx";
import { looksFor, useSwatches } from "../useSwatches.ts";
import { useTheme } from "../useTheme.ts";
import { useWidth } from "../useWidth.ts";
import { sameSpot, useView, view } from "../view.ts";
import type { Layer } from "./Painter.ts";
import { QuiltTree } from "./QuiltTree.tsx";
import type { Size } from "./rulers.ts";
import {
  cutPicture,
  edgePicture,
  type Found,
  figurePicture,
  findSpot,
  litPicture,
  patchesIn,
  placedIn,
  reachOf,
  roleOf,
  spotAt,
  spotPicture,
} from "./spots.ts";
import type { Stand, Window } from "./stand.ts";
import { usePainting } from "./usePainting.ts";
import { useStand } from "./useStand.ts";

interface QuiltViewProps {
  readonly shown: Answered;
  /** The quilt as decided: while a choice is tried, its edge stays in sight. */
  readonly now: Answered;
  readonly size: Pick<Size, "widthText" | "heightText">;
}

const RULER = 44;
const FOOT = 42;
const STEP_NEARER = 1.6;
/** CSS pixels to the inch when nearest: half as large again as life. */
const NEAREST = 144;
/** Figures along the cut piece, in CSS pixels when nearest. */
const LETTERING = 22;

/** The quilt as it will be seen, from the whole to one cut piece, every patch to be touched. */
export function QuiltView({ shown, now, size }: QuiltViewProps) {
  const { answer, brief } = shown;
  const quilt = answer.quilt!;
  const before = now.answer.quilt;
  const high = Math.max(quilt.height, before?.height ?? 0);
  const wide = Math.max(quilt.width, before?.width ?? 0);
  const [box, width] = useWidth<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const theme = useTheme();
  const swatches = useSwatches(brief);
  const spot = useView((v) => v.spot);
  const under = useView((v) => v.under);
  const lines = useView((v) => v.lines);
  const word = useView((v) => v.word);
  const figure = useView((v) => v.figure);
  const label = useRef<HTMLParagraphElement>(null);

  const left = width > 720 ? RULER : 0;
  const w = useMemo((): Window => {
    const most = Math.max(240, Math.min(innerHeight * 0.78, 900));
    const room = Math.max(1, width - left);
    return {
      left,
      top: 2,
      right: width - 1,
      bottom: 2 + Math.round(Math.min(most, (room * high) / wide)),
    };
  }, [width, left, high, wide]);
  // Both edges share their upper left corner, so that what is lost or won lies at the other two.
  const fit = useMemo(
    (): Stand => ({
      x: (wide - quilt.width) / 2,
      y: (quilt.height - high) / 2,
      scale: Math.max(1e-6, Math.min((w.right - w.left) / wide, (w.bottom - w.top) / high)),
    }),
    [w, wide, high, quilt.width, quilt.height],
  );

  const picture = useMemo(
    () =>
      quiltPicture(answer, placedIn(shown), {
        looks: looksFor(shown),
        patches: patchesIn(shown),
      }),
    [answer, shown],
  );
  const found = useMemo(() => findSpot(shown, under ?? spot), [shown, under, spot]);
  const litAll = useMemo(() => {
    const decides = word ? wordsOf(brief).find((x) => x.id === word)?.decides : undefined;
    if (lines.length > 0) return patchesLit(answer, lines);
    return decides && decides.length > 0 ? patchesOfRoles(answer, decides) : new Map();
  }, [answer, brief, lines, word]);

  const { scene, stand, paint, moved } = usePainting(canvas);
  const nearest = lengthToInch(NEAREST, answer.unit);
  const { goTo, zoom, toFit } = useStand(canvas, w, fit, nearest, stand, moved);

  const base: readonly Layer[] = useMemo(() => {
    const reach = reachOf(answer);
    const lit = litPicture(shown, litAll, picture);
    return [
      { picture, reach },
      ...(lit ? [{ picture: lit, reach: reach * 1.02 }] : []),
      ...(figure && answer.meetings.includes(figure)
        ? [{ picture: figurePicture(shown, figure, picture), reach }]
        : []),
      ...(found ? [{ picture: spotPicture(found, picture), reach }] : []),
      ...(before && before !== answer.quilt
        ? [{ picture: edgePicture(before, answer.quilt!, picture), reach }]
        : []),
    ];
  }, [answer, shown, litAll, picture, found, before, figure]);
  const cut = useMemo(
    () => (found ? cutPicture(shown, found, picture, LETTERING / nearest) : null),
    [shown, found, picture, nearest],
  );

  scene.current = {
    window: w,
    width,
    foot: FOOT,
    layers: (at) => {
      const closeness = found ? nearness(found, at, w) : 0;
      return cut && closeness > 0
        ? [...base, { picture: cut, reach: 0, opacity: closeness }]
        : base;
    },
    theme,
    swatches,
    size: { width: quilt.width, height: quilt.height, ...size },
    unit: answer.unit,
    leftRuler: left > 0,
    onFrame: (at) => found && placeLabel(label.current, found, at, w),
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: painted anew when what is shown changes
  useEffect(paint, [base, cut, theme, swatches, width, w, found, size]);

  const pointOf = (e: { clientX: number; clientY: number }): Found | null => {
    const el = canvas.current;
    if (!el) return null;
    const r = el.getBoundingClientRect();
    const x = e.clientX - r.left;
    const y = e.clientY - r.top;
    if (x < w.left || x > w.right || y < w.top || y > w.bottom) return null;
    const s = stand.current ?? fit;
    return spotAt(shown, {
      x: s.x + (x - (w.left + w.right) / 2) / s.scale,
      y: s.y - (y - (w.top + w.bottom) / 2) / s.scale,
    });
  };
  const touch = (f: Found | null): void => {
    view.setState({ spot: f, under: null });
    const role = f && roleOf(shown, f);
    const id = role
      ? wordOfRole(brief, role, f.block === "quilt" ? undefined : f.block)
      : undefined;
    if (id) openWord(id);
  };
  const nearTo = (f: Found | null): void => {
    if (!f) {
      toFit();
      return;
    }
    const b = boundingBox(f.polygon);
    const scale =
      0.5 *
      Math.min((w.right - w.left) / (b.right - b.left), (w.bottom - w.top) / (b.top - b.bottom));
    goTo({ x: (b.left + b.right) / 2, y: (b.bottom + b.top) / 2, scale });
  };
  const named = found && patchLabel(brief, answer, found.block, found.patch);
  const atFit = (stand.current ?? fit).scale <= fit.scale * 1.001;

  return (
    <figure className="quilt" ref={box}>
      <div className="over" aria-hidden="true">
        {named && (
          <p className="patch-label" ref={label}>
            <b>{named.name}</b>
            <span className={named.doubt ? "doubt" : ""}>
              , <Said text={named.rest} />
            </span>
          </p>
        )}
      </div>
      <QuiltTree
        shown={shown}
        onNear={nearTo}
        onTouch={touch}
        onZoom={(by) => zoom(by > 0 ? STEP_NEARER : 1 / STEP_NEARER, middleAt(found))}
      >
        <canvas
          ref={(el) => {
            canvas.current = el;
            el?.style.setProperty("height", `${w.bottom + FOOT}px`);
          }}
          onPointerMove={(e) => {
            if (e.pointerType === "touch") return;
            const f = pointOf(e);
            if (!sameSpot(f, under)) view.setState({ under: f });
          }}
          onPointerLeave={() => view.setState({ under: null })}
          onClick={(e) => touch(pointOf(e))}
          onDoubleClick={(e) => nearTo(pointOf(e))}
        />
      </QuiltTree>
      <p className="nearness">
        <button
          type="button"
          className="touch tall"
          onClick={() => zoom(STEP_NEARER, middleAt(found))}
        >
          Nearer
        </button>
        <button
          type="button"
          className="touch tall"
          disabled={atFit}
          onClick={() => zoom(1 / STEP_NEARER, middleAt(found))}
        >
          Farther
        </button>
        {found && (
          <button type="button" className="touch tall" onClick={() => nearTo(found)}>
            The cut piece
          </button>
        )}
        {!atFit && (
          <button type="button" className="touch tall" onClick={toFit}>
            The whole quilt
          </button>
        )}
      </p>
    </figure>
  );
}

/** Opens a word and brings it into sight. */
function openWord(id: string): void {
  view.setState({ word: id });
  requestAnimationFrame(() =>
    document
      .querySelector(`[data-word="${CSS.escape(id)}"]`)
      ?.scrollIntoView({ block: "center", behavior: "instant" }),
  );
}

/** The label stands over its patch, and hangs to the side that has room. */
function placeLabel(el: HTMLElement | null, f: Found, s: Stand, w: Window): void {
  if (!el) return;
  const b = boundingBox(f.polygon);
  const middle = (w.left + w.right) / 2;
  const at = middle + ((b.left + b.right) / 2 - s.x) * s.scale;
  const held = Math.max(w.left, Math.min(w.right, at));
  el.style.setProperty("--at", `${held}px`);
  el.classList.toggle("from-right", held > middle);
}

/** The middle of a patch, to come nearer to. */
function middleAt(f: Found | null): { x: number; y: number } | undefined {
  if (!f) return undefined;
  const b = boundingBox(f.polygon);
  return { x: (b.left + b.right) / 2, y: (b.bottom + b.top) / 2 };
}

/** 0 while a patch is small in the window, 1 once it nearly fills it: the cut piece comes up. */
function nearness(f: Found, s: Stand, w: Window): number {
  const b = boundingBox(f.polygon);
  const share =
    Math.max(b.right - b.left, b.top - b.bottom) *
    (s.scale / Math.min(w.right - w.left, w.bottom - w.top));
  return Math.max(0, Math.min(1, (share - 0.28) / 0.14));
}
