import { type Brief, lengthProblem } from "../core/brief/index.ts";
import { parseLength } from "../core/measure/index.ts";
import { readPoint } from "../core/recipe/index.ts";

/** What a student may say of her own; a field left as it is changes nothing. */
export interface Own {
  readonly usable: string;
  readonly seam: string;
  readonly point: string;
  readonly longest: string;
  readonly strip: string;
  readonly rows: string;
  readonly columns: string;
}

export type Field = keyof Own;

const wedges = (b: Brief) => b.blocks.flatMap((k) => (k.kind === "wedges" ? [k] : []));

/** The fields as the pattern has them. */
export function ownOf(b: Brief): Own {
  const { point, longest } = b.ruler;
  return {
    usable: b.fabrics.find((f) => f.kind !== "strip-set")?.usable ?? "",
    seam: b.seam,
    point:
      point === "sharp" ? "sharp" : "flat" in point ? `flat:${point.flat}` : `blunt:${point.blunt}`,
    longest: longest ?? "",
    strip: wedges(b)[0]?.strip ?? "",
    rows: String(b.quilt.rows),
    columns: String(b.quilt.columns),
  };
}

/** Why a field cannot be read; empty when all can. */
export function problemsOf(b: Brief, own: Own): Partial<Record<Field, string>> {
  const out: Partial<Record<Field, string>> = {};
  const example = b.unit === "in" ? "4 1/2 or 11.5 cm" : "115 or 11.5 cm";
  const length = (f: Field, may = false): void => {
    const text = own[f].trim();
    if (may && text === "") return;
    if (!parseLength(text, b.unit).ok) out[f] = `Type a length, such as ${example}.`;
    else if (lengthProblem(text, b.unit, false))
      out[f] = `Type a length that can be cut, such as ${example}.`;
  };
  length("usable");
  length("seam");
  length("longest", true);
  if (wedges(b).length > 0) length("strip");
  if (!readPoint(own.point, b.unit)) out.point = "Type sharp, blunt:1/4 or flat:3/8.";
  for (const f of ["rows", "columns"] as const)
    if (!/^[1-9]\d?$/.test(own[f].trim())) out[f] = "Type a whole number from 1 to 99.";
  return out;
}

/** Without sizes or rules of thumb of the teacher's own. */
function toCover<K extends { readonly cut?: Readonly<Record<string, object>> }>(k: K): K {
  if (!k.cut) return k;
  const cut = Object.entries(k.cut).map(([role, choice]) => {
    const { size: _size, rule: _rule, ...rest } = choice as { size?: string; rule?: string };
    return [role, rest];
  });
  return { ...k, cut: Object.fromEntries(cut) };
}

/** The pattern with a student's own fields: the same design, said anew. Fields are sound. */
export function withOwn(b: Brief, own: Own): Brief {
  const was = ownOf(b);
  const is = (f: Field): boolean => own[f].trim() !== was[f].trim();
  const point = is("point") ? readPoint(own.point, b.unit) : undefined;
  const { longest: _longest, ...ruler } = b.ruler;
  const longest = is("longest") ? own.longest.trim() : b.ruler.longest;
  const moved = is("strip") || is("seam") || is("point");
  const firstStrip = wedges(b)[0]?.strip;
  return {
    ...b,
    ...(is("seam") && { seam: own.seam.trim() }),
    ruler: { ...ruler, ...(point && { point }), ...(longest && { longest }) },
    fabrics: is("usable")
      ? b.fabrics.map((f) =>
          f.kind === "strip-set" ? f : { ...f, usable: own.usable.trim(), narrower: undefined },
        )
      : b.fabrics,
    blocks: b.blocks.map((k) => {
      if (k.kind !== "wedges") return k;
      const strip = is("strip") && k.strip === firstStrip ? own.strip.trim() : k.strip;
      // Sizes the teacher chose fit her wedges; another wedge's pieces are cut to cover again.
      return moved ? toCover({ ...k, strip }) : k;
    }),
    quilt: { ...b.quilt, rows: Number(own.rows), columns: Number(own.columns) },
  };
}
