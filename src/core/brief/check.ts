import type { Finding } from "../findings/index.ts";
import type { Brief, Placed } from "./schema.ts";

/** The most blocks a quilt may have: far beyond any quilt, small enough to draw and to count. */
export const MOST_BLOCKS = 10_000;

/** What the brief names but does not define, names used twice, and counts beyond reason. */
export function checkNames(brief: Brief): Finding[] {
  const fabrics = brief.fabrics.map((f) => f.id);
  const blocks = brief.blocks.map((b) => b.id);
  return [
    ...twice("fabrics", fabrics),
    ...twice("blocks", blocks),
    ...fabricUses(brief).flatMap(({ place, id }) =>
      missing("fabric-not-defined", "fabric", place, id, fabrics),
    ),
    ...brief.quilt.plan.flatMap((row, r) =>
      row.flatMap((cell, c) =>
        missing("block-not-defined", "block", `quilt/plan/${r}/${c}`, blockIn(cell), blocks),
      ),
    ),
    ...tooMany(brief),
  ];
}

export const blockIn = (cell: Placed): string => (typeof cell === "string" ? cell : cell.block);

/** Every place of the brief where a fabric is named. */
export function fabricUses(brief: Brief): { place: string; id: string }[] {
  const { quilt, finishing } = brief;
  const uses: { place: string; id: string | undefined }[] = [
    ...brief.blocks.flatMap((b, i) =>
      Object.entries(b.fabric).map(([role, id]) => ({ place: `blocks/${i}/fabric/${role}`, id })),
    ),
    ...brief.fabrics.flatMap((f, i) =>
      f.kind === "strip-set"
        ? f.strips.map((s, k) => ({ place: `fabrics/${i}/strips/${k}/fabric`, id: s.fabric }))
        : [],
    ),
    ...quilt.borders.flatMap((b, i) => [
      { place: `quilt/borders/${i}/fabric`, id: b.fabric },
      { place: `quilt/borders/${i}/cornerstone`, id: b.cornerstone },
    ]),
    { place: "quilt/sashing/fabric", id: quilt.sashing?.fabric },
    { place: "quilt/sashing/cornerstone", id: quilt.sashing?.cornerstone },
    { place: "quilt/setting", id: quilt.setting },
    { place: "finishing/binding/fabric", id: finishing?.binding?.fabric },
    { place: "finishing/backing/fabric", id: finishing?.backing?.fabric },
  ];
  return uses.filter((u): u is { place: string; id: string } => u.id !== undefined);
}

function missing(
  code: "fabric-not-defined" | "block-not-defined",
  word: "fabric" | "block",
  place: string,
  id: string,
  known: readonly string[],
): Finding[] {
  if (known.includes(id)) return [];
  return [{ code, severity: "blocks", place, words: { [word]: id, known: known.join(", ") } }];
}

function twice(list: string, ids: readonly string[]): Finding[] {
  return ids.flatMap((id, i): Finding[] =>
    ids.indexOf(id) === i
      ? []
      : [{ code: "id-twice", severity: "blocks", place: `${list}/${i}/id`, words: { id } }],
  );
}

function tooMany({ quilt }: Brief): Finding[] {
  const found = quilt.rows * quilt.columns;
  if (found <= MOST_BLOCKS) return [];
  return [
    {
      code: "too-many-blocks",
      severity: "blocks",
      place: "quilt",
      needed: MOST_BLOCKS,
      found,
      unit: "count",
    },
  ];
}
