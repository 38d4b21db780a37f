import { contentHash } from "../brief/index.ts";
import type { FabricLayout } from "../layout/types.ts";
import {
  blockPicture,
  escapeText,
  layoutPicture,
  type Picture,
  quiltPicture,
  type SvgOptions,
  toSvg,
} from "../picture/index.ts";
import { fabricLetter, fabricName, type SheetJob, say } from "./job.ts";
import { boughtWords, whyWords, yardageFor } from "./layout-words.ts";

/** The cutting layout of one fabric, with its words and what it was planned from. */
export interface LivingLayout {
  readonly id: string;
  readonly name: string;
  readonly bought: string;
  /** Why it takes no less; bold between pairs of asterisks. */
  readonly why: string;
  readonly picture: string;
  /** Of all that is asked of the fabric: equal where another plan of it would serve as well. */
  readonly asked: string;
}

/** A picture is as wide as a phone's column; wider screens enlarge it. */
const COLUMN = 350;

/** The finished top in its real fabrics, each kind of block, and every fabric's cutting layout. */
export function livingPictures(job: SheetJob): {
  readonly quilt: string;
  readonly blocks: readonly string[];
  readonly layouts: readonly LivingLayout[];
} {
  const { brief, answer, looks } = job;
  const svg = (p: Picture, prefix: string, options: Partial<SvgOptions> = {}): string =>
    withoutPhotos(
      job,
      toSvg(p, { swatches: job.swatches, width: COLUMN, prefix: `${prefix}-`, ...options }),
    );
  const title = `${brief.title}, the finished top in its fabrics`;
  const whole = answer.quilt;
  return {
    quilt: whole
      ? svg(quiltPicture(answer, job.placed, { looks, patches: job.between, title }), "q")
      : "",
    blocks: answer.blocks
      .filter((b) => !b.id.includes("~"))
      .map((b, i) =>
        svg(
          blockPicture(b, { unit: brief.unit, looks: looks[b.id] ?? [], title: b.name }),
          `k${i}`,
          {
            width: 320,
          },
        ),
      ),
    layouts: answer.layouts.map((layout, i) => ({
      id: layout.fabricId,
      name: `${fabricLetter(job, layout.fabricId)} ${fabricName(job, layout.fabricId)}`,
      bought: boughtWords(job, layout),
      why: whyWords(job, layout),
      picture: svg(layoutOf(job, layout), `l${i}`),
      asked: contentHash(askedOf(job, layout)),
    })),
  };
}

/** Long runs of one strip are drawn once; the small print stays legible in a phone's column. */
function layoutOf(job: SheetJob, layout: FabricLayout): Picture {
  const { brief, answer } = job;
  return layoutPicture(layout, {
    unit: brief.unit,
    demands: answer.demands,
    pieces: answer.pieces,
    recipes: answer.recipes,
    yardage: yardageFor(job, layout),
    folds: brief.fabrics.find((f) => f.id === layout.fabricId)?.folds,
    say: (x) => say(job, x),
    small: layout.width / 20,
    mostAlike: 2,
    firstLettered: true,
  });
}

/** All that decides the plan of a fabric, and its margins; not how well it was planned. */
function askedOf({ brief, answer }: SheetJob, layout: FabricLayout): unknown {
  const {
    name: _name,
    color: _color,
    ...fabric
  } = brief.fabrics.find((f) => f.id === layout.fabricId) ?? { id: "", name: "", color: "" };
  return [
    answer.demands.filter((d) => d.fabricId === layout.fabricId),
    layout.width,
    withoutPhoto(fabric),
    brief.step,
    brief.unit,
  ];
}

const withoutPhoto = (f: object): object =>
  Object.fromEntries(Object.entries(f).filter(([k]) => k !== "photo"));

/** The photo of each print as an attribute of a picture, and the short name that stands for it. */
const photosOf = ({ fabrics }: SheetJob["brief"]): [address: string, name: string][] =>
  fabrics.flatMap((f): [string, string][] =>
    f.kind === "print" && f.photo
      ? [[`href="${escapeText(f.photo.data)}"`, `href="photo:${f.id}"`]]
      : [],
  );

/** A photo travels once, in the brief: pictures name its fabric instead, and `withPhotos` puts it in. */
const withoutPhotos = ({ brief }: SheetJob, svg: string): string =>
  photosOf(brief).reduce((out, [address, name]) => out.replaceAll(address, () => name), svg);

/** The picture with the photos of its prints in their places. */
export const withPhotos = (brief: SheetJob["brief"], svg: string): string =>
  photosOf(brief).reduce((out, [address, name]) => out.replaceAll(name, () => address), svg);
