import type { WedgeBlock } from "../brief/schema.ts";
import type { Finding } from "../findings/finding.ts";
import { knownLength, type Length, tolerances, type Unit } from "../measure/index.ts";
import { leastHalf, type RadialSpec, radialBlock } from "./radial.ts";
import { leftWhole, type SettingRule, WEDGE_SETTINGS } from "./settings.ts";
import type { BlockGeometry } from "./types.ts";

/**
 * A wedge block from what the brief says and the half width `a` that its strip gives. `side` is the
 * finished width side to side; where a setting leaves it free and it is not said, the least is taken
 * (deep, sectors). Findings: `pattern-of-sectors`, `side-missing`, `side-not-free`,
 * `octagon-does-not-fit` (needed: the least side).
 */
export function layOutWedges(
  block: WedgeBlock,
  unit: Unit,
  a: Length,
): { geometry?: BlockGeometry; findings: Finding[] } {
  const patternProblem = checkPattern(block);
  if (patternProblem) return { findings: [patternProblem] };
  const join = tolerances(unit).join;
  const rule = WEDGE_SETTINGS[block.setting];
  const shape = {
    n: block.n,
    outline: block.outline,
    turned: rule.turned ?? block.turned ?? "flat",
    a,
    whole: leftWhole(block),
  };
  const size = chooseSide(block, unit, 2 * leastHalf(shape), rule.side);
  if (size.side === undefined) return { findings: size.findings };
  const half = size.side / 2;
  const spec: RadialSpec =
    block.setting === "framed"
      ? { ...shape, id: block.id, half: a, frame: half, tree: block.tree, join }
      : { ...shape, id: block.id, half, tree: block.tree, join };
  const geometry = radialBlock(spec);
  return { geometry, findings: [...size.findings, ...checkTree(block, geometry)] };
}

/** The side to build, with what is wrong with the one said. Undefined when none can be built. */
function chooseSide(
  block: WedgeBlock,
  unit: Unit,
  least: Length,
  free: SettingRule["side"],
): { side?: Length; findings: Finding[] } {
  const said = block.side === undefined ? undefined : knownLength(block.side, unit);
  const near = tolerances(unit).step;
  const finding = (
    code: Finding["code"],
    words: Readonly<Record<string, string>> = {},
  ): Finding => ({
    code,
    severity: "blocks",
    place: block.id,
    needed: least,
    ...(said === undefined ? {} : { found: said }),
    unit,
    words: { setting: block.setting, ...words },
  });
  if (free === "fixed") {
    const agrees = said === undefined || Math.abs(said - least) <= near;
    return { side: least, findings: agrees ? [] : [finding("side-not-free")] };
  }
  if (said === undefined) {
    if (free === "least-or-more" && least > 0) return { side: least, findings: [] };
    return { findings: [finding("side-missing")] };
  }
  const fits = free === "more" ? said > least + near : said >= least - near && said > near;
  if (fits) return { side: Math.max(said, least), findings: [] };
  return { findings: [finding("octagon-does-not-fit", free === "more" ? { more: "yes" } : {})] };
}

/** A pattern of sectors that the setting, the outline or the number of sectors does not allow. */
function checkPattern(block: WedgeBlock): Finding | undefined {
  const { setting, n, turned, whole = [] } = block;
  const problem = (why: string, words: Readonly<Record<string, string>> = {}): Finding => ({
    code: "pattern-of-sectors",
    severity: "blocks",
    place: block.id,
    words: { why, setting, sectors: String(n), ...words },
  });
  if (block.outline === "hexagon" && n !== 6 && n !== 12) return problem("hexagon-takes-6-or-12");
  if (setting !== "framed" && block.inner !== undefined) return problem("inner");
  if (setting !== "sectors") {
    if (n !== 8 || block.outline !== "square") return problem("named-setting");
    if (block.whole !== undefined) return problem("whole");
    if (turned !== undefined && turned !== WEDGE_SETTINGS[setting].turned) return problem("turned");
  }
  const beyond = whole.find((i) => i >= n);
  if (beyond !== undefined)
    return problem("sector-out-of-range", { sector: String(beyond), last: String(n - 1) });
  const twice = whole.find((i, at) => whole.indexOf(i) !== at);
  return twice === undefined ? undefined : problem("sector-twice", { sector: String(twice) });
}

/** The tree asked for by name must be one of those the block has. */
function checkTree(block: WedgeBlock, geometry: BlockGeometry): Finding[] {
  if (block.tree === undefined || geometry.choice.why === "asked") return [];
  const known = [geometry.choice.name, ...geometry.choice.others].join(", ");
  return [
    {
      code: "tree-not-known",
      severity: "draft",
      place: block.id,
      words: { asked: block.tree, known },
    },
  ];
}
