import type { Brief } from "../../brief/index.ts";
import { listed } from "./fabric.ts";
import { kindsInPlan } from "./plan-of-kinds.ts";
import { ROLE_NAMES } from "./roles.ts";
import { type Change, choiceWord, MOST_CHOICES, type WordSpec } from "./word.ts";

/** Where a fabric is named in the brief: what it is for, and how to name another. */
interface Use {
  readonly id: string;
  readonly what: string;
  readonly path: string;
  readonly fabric: string;
  readonly write: (d: Brief, fabric: string) => void;
  readonly decides: WordSpec["decides"];
  /** The block and role it dresses, where one does. */
  readonly of?: { readonly index: number; readonly key: string };
}

/**
 * The second sentence: which fabric everything is made of, block by block, then what belongs to the
 * quilt. Every fabric's name is a word.
 */
export function fabricUses(b: Brief): { readonly lead: string; readonly uses: readonly Use[] }[] {
  const kinds = kindsInPlan(b);
  const blocks = b.blocks.flatMap((block, index) => {
    if (!kinds.includes(block.id)) return [];
    const uses = Object.entries(block.fabric).map(
      ([key, fabric]): Use => ({
        id: `fabric/${block.id}/${key}`,
        what: ROLE_NAMES[key] ?? key,
        path: `blocks/${index}/fabric/${key}`,
        fabric,
        write: (d, to) => {
          d.blocks[index].fabric[key] = to;
        },
        decides: decidedBy(key).map((role) => ({ block: block.id, role })),
        of: { index, key },
      }),
    );
    const lead = kinds.length > 1 ? `${titled(block.name ?? block.id)}: ` : "";
    return uses.length > 0 ? [{ lead, uses }] : [];
  });
  const quilt = quiltUses(b);
  return quilt.length > 0
    ? [...blocks, { lead: kinds.length > 1 ? "Round them: " : "", uses: quilt }]
    : blocks;
}

const titled = (slug: string): string =>
  slug.charAt(0).toUpperCase() + slug.slice(1).replaceAll("-", " ");

const decidedBy = (key: string): string[] =>
  key === "wedge"
    ? ["wedge-even", "wedge-odd"]
    : key === "background"
      ? ["background", "background-left", "background-right"]
      : [key];

function quiltUses(b: Brief): Use[] {
  const q = b.quilt;
  const use = (
    id: string,
    what: string,
    path: string,
    fabric: string | undefined,
    write: Use["write"],
    roles: readonly string[],
  ): Use[] =>
    fabric === undefined
      ? []
      : [
          {
            id: `fabric/${id}`,
            what,
            path,
            fabric,
            write,
            decides: roles.map((role) => ({ role })),
          },
        ];
  return [
    ...use(
      "sashing",
      "sashing",
      "quilt/sashing/fabric",
      q.sashing?.fabric,
      (d, to) => {
        if (d.quilt.sashing) d.quilt.sashing.fabric = to;
      },
      ["sash"],
    ),
    ...use(
      "sashing/cornerstone",
      "cornerstones of the sashing",
      "quilt/sashing/cornerstone",
      q.sashing?.cornerstone,
      (d, to) => {
        if (d.quilt.sashing) d.quilt.sashing.cornerstone = to;
      },
      ["cornerstone"],
    ),
    ...use(
      "setting",
      q.arrangement === "hexagon-rows" ? "ends of the rows" : "setting triangles",
      "quilt/setting",
      edgesAreFilled(q) ? (q.setting ?? b.fabrics[0].id) : undefined,
      (d, to) => {
        d.quilt.setting = to;
      },
      ["setting-triangle", "corner-triangle"],
    ),
    ...q.borders.flatMap((border, i) =>
      use(
        `border/${i}`,
        q.borders.length === 1 ? "border" : `border ${i + 1}`,
        `quilt/borders/${i}/fabric`,
        border.fabric,
        (d, to) => {
          d.quilt.borders[i].fabric = to;
        },
        ["border"],
      ),
    ),
    ...q.borders.flatMap((border, i) =>
      use(
        `border/${i}/cornerstone`,
        q.borders.length === 1 ? "its cornerstones" : `cornerstones of border ${i + 1}`,
        `quilt/borders/${i}/cornerstone`,
        border.join === "butted" ? border.cornerstone : undefined,
        (d, to) => {
          d.quilt.borders[i].cornerstone = to;
        },
        ["cornerstone"],
      ),
    ),
    ...use(
      "binding",
      "binding",
      "finishing/binding/fabric",
      b.finishing?.binding?.fabric,
      (d, to) => {
        if (d.finishing?.binding) d.finishing.binding.fabric = to;
      },
      [],
    ),
    ...use(
      "backing",
      "backing",
      "finishing/backing/fabric",
      b.finishing?.backing?.fabric,
      (d, to) => {
        if (d.finishing?.backing) d.finishing.backing.fabric = to;
      },
      [],
    ),
  ];
}

/** Triangles on point, or hexagon rows' ends, take a fabric of their own. */
const edgesAreFilled = (q: Brief["quilt"]): boolean =>
  q.arrangement === "on-point" ? q.edges !== "halves" : q.arrangement === "hexagon-rows";

/** A fabric's name as a word: this fabric and the next ones of the brief; arrows walk through all. */
export function fabricWord(b: Brief, use: Use): WordSpec {
  const at = Math.max(
    0,
    b.fabrics.findIndex((f) => f.id === use.fabric),
  );
  const nameOf = (id: string): string => b.fabrics.find((f) => f.id === id)?.name ?? id;
  const from = Math.max(0, Math.min(at - 1, b.fabrics.length - MOST_CHOICES));
  const write =
    (id: string): Change =>
    (d) =>
      use.write(d, id);
  return {
    ...choiceWord({
      id: use.id,
      role: `Fabric of the ${use.what}`,
      path: use.path,
      text: nameOf(use.fabric),
      options: b.fabrics.slice(from, from + MOST_CHOICES).map((f) => ({
        label: f.name,
        change: write(f.id),
        picture: "fabric",
      })),
      decides: use.decides,
    }),
    read: (text) => {
      const f = b.fabrics.find(
        (x) => x.name.toLowerCase() === text.trim().toLowerCase() || x.id === text.trim(),
      );
      return f
        ? write(f.id)
        : {
            problem: `No fabric here is called that. There are ${listed(b.fabrics.map((x) => x.name))}.`,
          };
    },
    step: (by) => {
      const next = b.fabrics[at + by];
      return next ? write(next.id) : undefined;
    },
  };
}
