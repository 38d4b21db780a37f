import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef } from "react";

interface Place {
  readonly x: number;
  readonly y: number;
}

/** What can be moved over a picture: a ring anywhere, a level line up and down, an upright one aside. */
export type Mark =
  | { readonly id: string; readonly kind: "ring"; readonly at: Place; readonly label: string }
  | {
      readonly id: string;
      readonly kind: "level" | "upright";
      readonly at: number;
      readonly label: string;
      /** Where it lies, as spoken: "3 1/2 in up". */
      readonly says: string;
    };

interface MarksProps {
  /** Of the picture's own frame: x right, y down, in its pixels. */
  readonly box: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly label: string;
  readonly marks: readonly Mark[];
  /** A mark moved to this place; lines take of it what they can. */
  readonly onMove: (id: string, to: Place) => void;
  /** Pixels that an arrow moves; with shift ten times as far. */
  readonly step?: number;
  /** A tap beside every mark. */
  readonly onTap?: (at: Place) => void;
  /** The picture, and what is drawn under the marks. */
  readonly children: ReactNode;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A picture with marks on it, each dragged by touch or moved by arrows. */
export function Marks({ box, label, marks, onMove, step = 1, onTap, children }: MarksProps) {
  const svg = useRef<SVGSVGElement>(null);
  const held = useRef<string | null>(null);
  const within = (p: Place): Place => ({
    x: Math.min(box.x + box.width, Math.max(box.x, p.x)),
    y: Math.min(box.y + box.height, Math.max(box.y, p.y)),
  });
  const placeOf = (e: { clientX: number; clientY: number }): Place => {
    const r = svg.current?.getBoundingClientRect() ?? new DOMRect(0, 0, 1, 1);
    return within({
      x: box.x + ((e.clientX - r.left) / r.width) * box.width,
      y: box.y + ((e.clientY - r.top) / r.height) * box.height,
    });
  };
  const down = (e: PointerEvent<SVGSVGElement>): void => {
    const id = (e.target as Element).closest<SVGElement>("[data-mark]")?.dataset.mark;
    held.current = id ?? null;
    if (id) e.currentTarget.setPointerCapture(e.pointerId);
  };
  const move = (e: PointerEvent<SVGSVGElement>): void => {
    if (held.current) onMove(held.current, placeOf(e));
  };
  const keys = (m: Mark) => (e: KeyboardEvent) => {
    const by = ARROWS[e.key];
    if (!by) return;
    e.preventDefault();
    const far = e.shiftKey ? 10 * step : step;
    const now = m.kind === "ring" ? m.at : { x: m.at, y: m.at };
    onMove(m.id, within({ x: now.x + by[0] * far, y: now.y + by[1] * far }));
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: every mark has its keys, and none needs a tap
    // biome-ignore lint/a11y/useSemanticElements: an svg cannot be a fieldset
    <svg
      ref={svg}
      className="marks"
      viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
      role="group"
      aria-label={label}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={() => {
        // A click follows, which must still know that a mark was held.
        setTimeout(() => {
          held.current = null;
        });
      }}
      onClick={(e) => !held.current && onTap?.(placeOf(e))}
    >
      {children}
      {marks.map((m) => (
        <OneMark key={m.id} mark={m} box={box} onKeyDown={keys(m)} />
      ))}
    </svg>
  );
}

interface OneMarkProps {
  readonly mark: Mark;
  readonly box: MarksProps["box"];
  readonly onKeyDown: (e: KeyboardEvent) => void;
}

function OneMark({ mark: m, box, onKeyDown }: OneMarkProps) {
  const radius = Math.max(box.width, box.height) / 60;
  const common = { tabIndex: 0, "data-mark": m.id, onKeyDown };
  if (m.kind === "ring")
    return (
      // biome-ignore lint/a11y/useSemanticElements: a ring on a picture
      <g {...common} role="button" className="mark" aria-label={m.label}>
        <circle className="hold" cx={m.at.x} cy={m.at.y} r={1} />
        <circle className="case" cx={m.at.x} cy={m.at.y} r={radius} />
        <circle className="seen" cx={m.at.x} cy={m.at.y} r={radius} />
      </g>
    );
  const [x1, x2] = m.kind === "level" ? [box.x, box.x + box.width] : [m.at, m.at];
  const [y1, y2] = m.kind === "level" ? [m.at, m.at] : [box.y, box.y + box.height];
  const low = m.kind === "level" ? box.y : box.x;
  const high = m.kind === "level" ? box.y + box.height : box.x + box.width;
  const line = { x1, y1, x2, y2 };
  return (
    <g
      {...common}
      role="slider"
      className={`mark ${m.kind}`}
      aria-label={m.label}
      aria-orientation={m.kind === "level" ? "vertical" : "horizontal"}
      aria-valuemin={Math.round(low)}
      aria-valuemax={Math.round(high)}
      aria-valuenow={Math.round(m.at)}
      aria-valuetext={m.says}
    >
      <line className="hold" {...line} />
      <line className="case" {...line} />
      <line className="seen" {...line} />
    </g>
  );
}
