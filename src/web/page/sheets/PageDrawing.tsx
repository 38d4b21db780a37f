import { memo, type ReactNode } from "react";
import { type Glyphs, INKS, type Item, type Page } from "../../../core/sheet/model.ts";
import { SvgDrawing } from "../Drawing.tsx";

/** A page of the model as SVG: every stretch of type, rule and figure where the model has it. */
export const PageDrawing = memo(function PageDrawing({
  page,
  prefix,
}: {
  page: Page;
  prefix: string;
}) {
  return (
    <svg viewBox={`0 0 ${page.width} ${page.height}`} focusable="false" aria-hidden="true">
      {page.items.map((item, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: items are known by their place
        <g key={i}>{drawn(item, `${prefix}i${i}`)}</g>
      ))}
    </svg>
  );
});

function drawn(item: Item, prefix: string): ReactNode {
  switch (item.kind) {
    case "text":
    case "furniture":
      return item.glyphs.map(stretch);
    case "table":
      return item.rows.flatMap((row) => row.flatMap((cell) => cell.glyphs)).map(stretch);
    case "figure":
      return (
        <g transform={`translate(${item.x} ${item.y})`}>
          <SvgDrawing drawing={item.drawing} prefix={prefix} label={item.alt} />
        </g>
      );
    case "rule":
      return (
        <path
          d={`M${item.from.join(" ")}L${item.to.join(" ")}`}
          stroke={INKS[item.color]}
          strokeWidth={item.width}
        />
      );
    case "box":
      return (
        <rect
          x={item.x}
          y={item.y}
          width={item.width}
          height={item.height}
          fill="none"
          stroke={INKS.ink}
          strokeWidth={item.line}
        />
      );
  }
}

function stretch(g: Glyphs, i: number): ReactNode {
  const classes = [`face-${g.face}`, ...(g.fraction ? ["frac"] : [])].join(" ");
  const key = `${i} ${g.x} ${g.y}`;
  return (
    <g key={key}>
      {g.doubt && (
        <path
          d={`M${g.x} ${g.y + 2.1}H${g.x + g.width}`}
          stroke={INKS.ink}
          strokeWidth={1.1}
          strokeLinecap="round"
          strokeDasharray="0 2.6"
        />
      )}
      <text x={g.x} y={g.y} fontSize={g.size} fill={INKS[g.color]} className={classes}>
        {g.text}
      </text>
    </g>
  );
}
