import { Fragment, type ReactNode } from "react";
import type { Drawing as Drawn, Op } from "../../core/picture/draw.ts";
import { FRACTION_GAP, FRACTION_SLASH, type Run } from "../../core/picture/fraction.ts";
import type { Stroke } from "../../core/picture/theme.ts";

type Points = readonly { readonly x: number; readonly y: number }[];

const n = (x: number): string => String(Math.round(x * 100) / 100);

const pathOf = (points: Points, closed: boolean): string =>
  `M${points.map((p) => `${n(p.x)} ${n(p.y)}`).join("L")}${closed ? "Z" : ""}`;

const strokeOf = (s: Stroke | undefined) =>
  s && {
    stroke: s.color,
    strokeWidth: s.width,
    strokeDasharray: s.dash?.join(" "),
    strokeLinecap: s.round ? ("round" as const) : undefined,
  };

/** Clips are named in the order they are met, within one drawing. */
class Clips {
  readonly nodes: ReactNode[] = [];
  private readonly prefix: string;

  constructor(prefix: string) {
    this.prefix = prefix;
  }

  add(points: Points): string {
    const id = `${this.prefix}clip${this.nodes.length}`;
    this.nodes.push(
      <clipPath key={id} id={id}>
        <path d={pathOf(points, true)} />
      </clipPath>,
    );
    return `url(#${id})`;
  }
}

/** A drawing of the core as SVG: a plain reading of its list, one element an entry. */
export function SvgDrawing({
  drawing,
  prefix,
  label,
}: {
  drawing: Drawn;
  prefix: string;
  label: string;
}) {
  const clips = new Clips(prefix);
  const all = (ops: readonly Op[]): ReactNode =>
    // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is a list without names
    ops.map((op, i) => <Fragment key={i}>{one(op)}</Fragment>);
  const one = (op: Op): ReactNode => {
    switch (op.op) {
      case "path":
        return (
          <path
            d={pathOf(op.points, op.closed)}
            fill={op.fill ?? "none"}
            pointerEvents={op.fill === "none" ? "all" : undefined}
            data-id={op.id}
            {...strokeOf(op.stroke)}
          />
        );
      case "strokes":
        return (
          <path
            d={op.segments.map((s) => pathOf(s, false)).join("")}
            fill="none"
            {...strokeOf(op.stroke)}
          />
        );
      case "circle":
        return (
          <circle
            cx={n(op.at.x)}
            cy={n(op.at.y)}
            r={n(op.radius)}
            fill={op.fill ?? "none"}
            data-id={op.id}
            {...strokeOf(op.stroke)}
          />
        );
      case "text":
        return textOf(op);
      case "image":
        return (
          <g clipPath={clips.add(op.clip)}>
            {op.tiles.map((m) => (
              <image
                key={m.join()}
                href={op.data}
                y={-op.height}
                width={op.width}
                height={op.height}
                preserveAspectRatio="none"
                transform={`matrix(${m.join(" ")})`}
              />
            ))}
          </g>
        );
      case "group":
        return (
          <g clipPath={op.clip ? clips.add(op.clip) : undefined} data-id={op.id}>
            {all(op.ops)}
          </g>
        );
      case "use":
        return (
          <use
            href={`#${prefix}${op.of}`}
            transform={`matrix(${op.matrix.join(" ")})`}
            data-id={op.id}
          />
        );
    }
  };
  const stamps = Object.entries(drawing.stamps).map(([name, ops]) => (
    <g key={name} id={prefix + name}>
      {all(ops)}
    </g>
  ));
  const body = all(drawing.ops);
  return (
    <svg
      width={n(drawing.width)}
      height={n(drawing.height)}
      viewBox={`0 0 ${n(drawing.width)} ${n(drawing.height)}`}
      role="img"
      aria-label={label}
    >
      <defs>
        {stamps}
        {clips.nodes}
      </defs>
      {body}
    </svg>
  );
}

function textOf(op: Extract<Op, { op: "text" }>): ReactNode {
  return (
    <text
      x={n(op.at.x)}
      y={n(op.at.y)}
      fontSize={n(op.size)}
      fontWeight={op.bold ? 700 : undefined}
      textAnchor={op.anchor === "start" ? undefined : op.anchor}
      fill={op.color}
      stroke={op.halo?.color}
      strokeWidth={op.halo?.width}
      strokeLinejoin={op.halo ? "round" : undefined}
      paintOrder={op.halo ? "stroke" : undefined}
      transform={op.turn === 0 ? undefined : `rotate(${n(op.turn)} ${n(op.at.x)} ${n(op.at.y)})`}
    >
      {op.runs.map(runOf)}
    </text>
  );
}

/** The fraction is a run of its own, or it would swallow the whole number before it. */
function runOf(run: Run, i: number): ReactNode {
  if (run.kind === "text") return <Fragment key={`${i}t`}>{run.text}</Fragment>;
  return (
    <Fragment key={`${i}f`}>
      {run.whole && `${run.whole} `}
      <tspan className="frac" dx={run.whole ? `${FRACTION_GAP - 0.22}em` : undefined}>
        {run.above}
        {FRACTION_SLASH}
        {run.below}
      </tspan>
    </Fragment>
  );
}
