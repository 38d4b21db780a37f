import type { BlockGeometry } from "../block/index.ts";
import { type Brief, blockIn, seamOf } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import { knownLength, type Length, tolerances } from "../measure/index.ts";

/** Blocks of one quilt must finish alike; only a square block can be turned by a quarter. */
export function sizeFindings(brief: Brief, used: readonly BlockGeometry[]): Finding[] {
  const [first, ...others] = used;
  const { congruent } = tolerances(brief.unit);
  const near = (a: Length, b: Length): boolean => Math.abs(a - b) <= congruent;
  const differing = others
    .filter((b) => !near(first.width, b.width) || !near(first.height, b.height))
    .map(
      (b): Finding => ({
        code: "blocks-differ-in-size",
        severity: "blocks",
        place: "quilt",
        needed: first.width,
        found: b.width,
        unit: brief.unit,
        words: { a: b.id, b: first.id },
      }),
    );
  const square = near(first.width, first.height) && first.outline.length === 4;
  // On point even one block must be square: its corner triangles are.
  const { arrangement, rows, columns } = brief.quilt;
  const alone = rows * columns === 1 && arrangement !== "on-point";
  return square || alone ? differing : [...differing, ...turnedFindings(brief)];
}

function turnedFindings(brief: Brief): Finding[] {
  const turned = brief.quilt.plan
    .flat()
    .filter((cell) => typeof cell !== "string" && cell.quarters % 2 === 1)
    .map(blockIn);
  const onPoint = brief.quilt.arrangement === "on-point";
  if (turned.length === 0 && !onPoint) return [];
  return [
    {
      code: "block-not-square",
      severity: "blocks",
      place: "quilt",
      words: {
        block: turned[0] ?? blockIn(brief.quilt.plan[0][0]),
        works: onPoint ? "Take straight rows." : "Turn it by a half, or not at all.",
      },
    },
  ];
}

/** Hexagons lie together in hexagon rows, squares in the other arrangements; sashing in straight rows and on point. */
export function outlineFindings(brief: Brief, used: readonly BlockGeometry[]): Finding[] {
  const { arrangement, rows, columns, sashing, borders, offset } = brief.quilt;
  const wanted = arrangement === "hexagon-rows" ? 6 : 4;
  // One hexagon may be a top by itself; strips round it would leave its corners open.
  const alone = rows * columns === 1 && arrangement === "rows" && !sashing && borders.length === 0;
  const misfits = used
    .filter((b) => b.outline.length !== wanted && !alone)
    .map(
      (b): Finding => ({
        code: "outline-does-not-fit",
        severity: "blocks",
        place: "quilt/arrangement",
        words: {
          block: b.id,
          works:
            wanted === 6
              ? "Take straight rows, or hexagon blocks."
              : "Hexagon blocks lie together in hexagon rows.",
        },
      }),
    );
  const sashes = arrangement === "on-point" || (arrangement === "rows" && !offset);
  return sashing && !sashes
    ? [...misfits, { code: "sashing-in-rows-only", severity: "blocks", place: "quilt/sashing" }]
    : misfits;
}

/** Borders wider than what they frame, and sashes or borders that their own allowances fill. */
export function borderFindings(
  brief: Brief,
  center: { readonly width: Length; readonly height: Length },
): Finding[] {
  const { unit } = brief;
  const seam = seamOf(brief);
  const narrow = (place: string, text: string | undefined): Finding[] => {
    if (text === undefined) return [];
    const found = knownLength(text, unit);
    if (found > 2 * seam) return [];
    return [
      { code: "allowances-fill-it", severity: "advice", place, found, needed: 2 * seam, unit },
    ];
  };
  let inside = Math.min(center.width, center.height);
  const wide: Finding[] = [];
  brief.quilt.borders.forEach((border, i) => {
    const found = knownLength(border.width, unit);
    if (found > inside)
      wide.push({
        code: "border-wider-than-quilt",
        severity: "blocks",
        place: `border ${i + 1}`,
        needed: inside,
        found,
        unit,
      });
    inside += 2 * found;
  });
  return [
    ...wide,
    ...narrow("the sashing", brief.quilt.sashing?.width),
    ...brief.quilt.borders.flatMap((b, i) => narrow(`border ${i + 1}`, b.width)),
  ];
}
