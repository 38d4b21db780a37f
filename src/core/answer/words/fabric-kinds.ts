import { type Brief, commonOf, type Fabric } from "../../brief/index.ts";
import { type OneFabric, wordId, wordPath } from "./fabric-at.ts";
import { type Change, choiceWord, type WordSpec } from "./word.ts";

export const KIND_WORDS: Readonly<Record<Fabric["kind"], string>> = {
  plain: "a plain fabric",
  stripe: "a printed stripe",
  print: "a print",
  "strip-set": "a strip set",
};

/** The fabric as another kind, begun with what can be guessed; what it was is in "take back". */
function asKind(b: Brief, f: Fabric, kind: Fabric["kind"]): Fabric | undefined {
  const common = commonOf(f);
  const width = b.unit === "in" ? "1" : "25";
  switch (kind) {
    case "plain":
      return { kind, ...common };
    case "stripe": {
      const bands = [f.color, "#F4F1E8"].map((color) => ({ width, color }));
      return { kind, ...common, runs: "along", bands, tilt: 0 };
    }
    case "print":
      return { kind, ...common };
    case "strip-set": {
      const others = b.fabrics.filter((x) => x.id !== f.id && x.kind !== "strip-set").slice(0, 2);
      const cut = b.unit === "in" ? "2 1/2" : "65";
      const strips = others.map((x) => ({ fabric: x.id, cut }));
      return others.length > 0 ? { kind, ...common, strips } : undefined;
    }
  }
}

export function kindWord(o: OneFabric): WordSpec {
  const { brief, fabric } = o;
  const kinds = (Object.keys(KIND_WORDS) as Fabric["kind"][]).flatMap((kind) => {
    if (kind === fabric.kind) return [{ kind, change: (() => {}) as Change }];
    const made = asKind(brief, fabric, kind);
    const change: Change = (d) => {
      const at = d.fabrics.findIndex((f) => f.id === fabric.id);
      if (at >= 0 && made) d.fabrics[at] = made;
    };
    return made ? [{ kind, change }] : [];
  });
  return choiceWord({
    id: wordId(o, "kind"),
    role: `What kind of fabric ${fabric.name} is`,
    path: wordPath(o, "kind"),
    text: KIND_WORDS[fabric.kind],
    options: kinds.map(({ kind, change }) => ({
      label: KIND_WORDS[kind],
      change,
      picture: "block",
    })),
  });
}

/** A fabric more, plain, as wide and cut as the first. Its id is free. */
export function addFabric(d: Brief): void {
  const free = (n: number): boolean => !d.fabrics.some((f) => f.id === `fabric-${n}`);
  let n = d.fabrics.length + 1;
  while (!free(n)) n++;
  const { usable, folds } = d.fabrics[0];
  d.fabrics.push({
    kind: "plain",
    id: `fabric-${n}`,
    name: `Fabric ${n}`,
    usable,
    folds,
    directional: false,
    reversible: false,
    color: "#B9B2A3",
  });
}

/** Is the fabric named anywhere outside its own entry? */
export function isNamed(b: Brief, id: string): boolean {
  const { fabrics, ...rest } = b;
  const inSets = fabrics.some(
    (f) => f.id !== id && f.kind === "strip-set" && f.strips.some((s) => s.fabric === id),
  );
  return inSets || names(rest, id);
}

function names(value: unknown, id: string): boolean {
  if (typeof value === "string") return value === id;
  if (typeof value !== "object" || value === null) return false;
  return Object.values(value).some((v) => names(v, id));
}

/** Takes a fabric out that nothing is made of. Throws RangeError when something is. */
export const removeFabric =
  (id: string): Change =>
  (d) => {
    if (isNamed(d, id) || d.fabrics.length === 1)
      throw new RangeError(`${id}: a fabric that nothing is made of expected`);
    d.fabrics = d.fabrics.filter((f) => f.id !== id);
  };

export const colorFabric = (id: string, color: string): Change =>
  onFabricId(id, (f) => {
    f.color = color;
  });

export const setBands = (
  id: string,
  bands: readonly { readonly width: string; readonly color: string }[],
): Change =>
  onFabricId(id, (f) => {
    if (f.kind === "stripe") f.bands = bands.map((x) => ({ ...x }));
  });

export const setStrips = (
  id: string,
  strips: readonly { readonly fabric: string; readonly cut: string }[],
): Change =>
  onFabricId(id, (f) => {
    if (f.kind === "strip-set") f.strips = strips.map((x) => ({ ...x }));
  });

const onFabricId =
  (id: string, write: (f: Fabric) => void): Change =>
  (d) => {
    const f = d.fabrics.find((x) => x.id === id);
    if (f) write(f);
  };
