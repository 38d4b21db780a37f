import { type Block, type Brief, type Fabric, seamOf } from "../../brief/index.ts";
import type { Length } from "../../measure/index.ts";
import { lookOf } from "../look.ts";
import type { Look } from "../types.ts";
import { type Lab, labOf, meanLab } from "./lab.ts";

/** One change of the brief: the fabric of one role. */
export interface FabricChange {
  readonly path: readonly (string | number)[];
  readonly from: string;
  readonly to: string;
}

/** The same block colored another way. */
export interface Coloring {
  readonly kind: "exchanged" | "inverted" | "one-swapped";
  /** One sentence; `word` is the part of it that differs. */
  readonly label: string;
  readonly word: string;
  readonly changes: readonly FabricChange[];
  readonly brief: Brief;
}

export const MOST_COLORINGS = 4;

/** Mean color of a fabric as it lies on the bolt. */
export function fabricLab(look: Look): Lab {
  if (look.kind !== "bands" || look.bands.length === 0)
    return labOf(look.kind === "bands" ? "#DDDDDD" : look.color);
  return meanLab(look.bands.map((b) => ({ lab: labOf(b.color), area: b.to - b.from })));
}

type Roles = Readonly<Record<string, string>>;

interface Draft {
  readonly kind: Coloring["kind"];
  readonly roles: Roles;
  readonly word: string;
  readonly label: string;
}

/**
 * At most four other colorings of one block: two roles exchanged, its values inverted (darkest for
 * lightest), one fabric swapped for another of the brief that parts best from its neighbors. Each
 * is a whole brief and differs from all the others; none changes a size.
 */
export function colorings(brief: Brief, blockId: string): Coloring[] {
  const index = brief.blocks.findIndex((b) => b.id === blockId);
  if (index < 0) throw new RangeError(`a block of the brief expected, got ${blockId}`);
  const block = brief.blocks[index];
  const lightness = lightnessOf(brief);
  const [exchange, ...exchanges] = exchanged(block, lightness);
  const [swap, ...swaps] = swapped(block, brief.fabrics, lightness);
  const drafts = [exchange, ...inverted(block, lightness), swap, ...exchanges, ...swaps];
  const seen = new Set([key(block.fabric)]);
  const out: Coloring[] = [];
  for (const d of drafts) {
    if (!d || seen.has(key(d.roles)) || out.length === MOST_COLORINGS) continue;
    seen.add(key(d.roles));
    out.push(asColoring(brief, index, d));
  }
  return out;
}

const key = (roles: Roles): string =>
  Object.keys(roles)
    .sort()
    .map((r) => `${r}=${roles[r]}`)
    .join();

function lightnessOf(brief: Brief): ReadonlyMap<string, number> {
  const seam: Length = seamOf(brief);
  return new Map(
    brief.fabrics.map((f) => [f.id, fabricLab(lookOf(f, brief.fabrics, brief.unit, seam).look).l]),
  );
}

type Lightness = ReadonlyMap<string, number>;
const l = (of: Lightness, id: string): number => of.get(id) ?? 50;

/** Wedges first: they are what the eye begins with. */
const rolesOf = (block: Block): string[] =>
  Object.keys(block.fabric).sort(
    (p, q) => Number(q.startsWith("wedge")) - Number(p.startsWith("wedge")) || (p < q ? -1 : 1),
  );

/** The two roles that differ most in value, exchanged; then the next pair. */
function exchanged(block: Block, of: Lightness): Draft[] {
  const roles = rolesOf(block);
  const pairs = roles.flatMap((p, i) => roles.slice(i + 1).map((q) => [p, q] as const));
  return pairs
    .filter(([p, q]) => block.fabric[p] !== block.fabric[q])
    .sort((x, y) => gap(block, of, y) - gap(block, of, x))
    .slice(0, 2)
    .map(([p, q]) => ({
      kind: "exchanged",
      roles: { ...block.fabric, [p]: block.fabric[q], [q]: block.fabric[p] },
      word: "exchanged",
      label: `${said(p)} and ${said(q)} exchanged`,
    }));
}

const gap = (block: Block, of: Lightness, [p, q]: readonly [string, string]): number =>
  Math.abs(l(of, block.fabric[p]) - l(of, block.fabric[q]));

/** Darkest for lightest, second darkest for second lightest ... */
function inverted(block: Block, of: Lightness): Draft[] {
  const used = [...new Set(Object.values(block.fabric))].sort(
    (p, q) => l(of, p) - l(of, q) || (p < q ? -1 : 1),
  );
  if (used.length < 2) return [];
  const opposite = new Map(used.map((id, i) => [id, used[used.length - 1 - i]]));
  const roles = Object.fromEntries(
    Object.entries(block.fabric).map(([r, id]) => [r, opposite.get(id) ?? id]),
  );
  return [{ kind: "inverted", roles, word: "inverted", label: "light and dark inverted" }];
}

/** One role in another fabric of the brief: the swaps that part best from the other roles first. */
function swapped(block: Block, fabrics: readonly Fabric[], of: Lightness): Draft[] {
  const roles = rolesOf(block);
  const drafts = roles.flatMap((role) =>
    fabrics
      .filter((f) => f.id !== block.fabric[role])
      .map((f) => {
        const others = roles.filter((r) => r !== role).map((r) => l(of, block.fabric[r]));
        const least = Math.min(100, ...others.map((x) => Math.abs(x - l(of, f.id))));
        return { role, f, least };
      }),
  );
  return drafts
    .sort((p, q) => q.least - p.least)
    .map(({ role, f }) => ({
      kind: "one-swapped",
      roles: { ...block.fabric, [role]: f.id },
      word: f.name,
      label: `${said(role)} in ${f.name}`,
    }));
}

const PLURAL: Readonly<Record<string, string>> = {
  wedge: "wedges",
  "wedge-even": "even wedges",
  "wedge-odd": "odd wedges",
  kite: "kites",
  corner: "corners",
  trapezoid: "trapezoids",
  bar: "bars",
  patch: "patches",
};
const said = (role: string): string => PLURAL[role] ?? role.replace(/-/g, " ");

function asColoring(brief: Brief, index: number, d: Draft): Coloring {
  const block = brief.blocks[index];
  const changes = Object.keys(d.roles)
    .sort()
    .filter((r) => d.roles[r] !== block.fabric[r])
    .map((r) => ({
      path: ["blocks", index, "fabric", r],
      from: block.fabric[r],
      to: d.roles[r],
    }));
  const blocks = brief.blocks.map((b, i) => (i === index ? { ...b, fabric: d.roles } : b));
  const { kind, label, word } = d;
  return { kind, label, word, changes, brief: { ...brief, blocks } };
}
