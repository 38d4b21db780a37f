import type { Answer } from "../../../core/answer/index.ts";
import type { Brief } from "../../../core/brief/index.ts";
import { type Sheet, sheetJob } from "../../../core/sheet/index.ts";
import {
  correctionSheet,
  costSheet,
  kitLabels,
  runSheet,
  studentSheet,
  teacherSheet,
} from "../../../core/sheet/shop/index.ts";
import {
  type BagWeight,
  bagWeight,
  correcting,
  costsOf,
  type KitCosts,
  type KitPlan,
  type LabelSheet,
  type Left,
  leaving,
  planClass,
  planKits,
  rippleOf,
  rulesOf,
  type Shelf,
  type StudentPlan,
  saySeam,
} from "../../../core/shop/index.ts";

export interface KitAnswer {
  readonly plan: KitPlan;
  readonly costs?: KitCosts;
  readonly weight: BagWeight;
}

/** A student's plan as the page shows it, without the answers it was worked out from. */
export type StudentLines = Omit<StudentPlan, "brief" | "answer" | "seam"> & {
  readonly seam: readonly string[];
};

const linesOf = (s: StudentPlan): StudentLines => {
  const { brief, answer: _, seam, ...rest } = s;
  return { ...rest, seam: seam ? saySeam(seam, brief) : [] };
};

export type ShopPaper =
  | { readonly what: "run"; readonly shelf: Shelf }
  | { readonly what: "costs"; readonly shelf: Shelf }
  | {
      readonly what: "labels";
      readonly shelf: Shelf;
      readonly sheet: LabelSheet;
      readonly first: number;
    }
  | { readonly what: "teacher" | "students" | "correction" };

export interface Printing {
  readonly brief: Brief;
  readonly answer: Answer;
  readonly version: string;
  /** `2026-11-25`, and as it is printed. */
  readonly day: string;
  readonly date: string;
}

const sheetsOf = ({ brief, answer, version, date }: Printing, paper: ShopPaper): Sheet[] => {
  const job = sheetJob(brief, answer, { version, date });
  switch (paper.what) {
    case "teacher":
      return [teacherSheet(job, planClass(brief, answer))];
    case "students": {
      const plan = planClass(brief, answer);
      return [plan.everyone, ...plan.students].map((s) => studentSheet(job, s));
    }
    case "correction":
      return [correctionSheet(job, rippleOf(brief, answer))];
    default: {
      const plan = planKits(brief, answer, paper.shelf);
      const kit = { job, plan, shelf: paper.shelf, rules: rulesOf(brief) };
      if (paper.what === "run") return [runSheet(kit)];
      if (paper.what !== "labels") return [costSheet(kit)];
      return [kitLabels(kit, { sheet: paper.sheet, first: paper.first })];
    }
  }
};

/** The writer and its faces, brought when the first paper is wanted. */
const writer = async () => {
  const [{ webFonts }, { writePdf }] = await Promise.all([
    import("../../../pdf/fonts.web.ts"),
    import("../../../pdf/index.ts"),
  ]);
  return { fonts: await webFonts(), writePdf };
};
let writing: ReturnType<typeof writer> | undefined;

/** What the shop's screen asks of its worker: the core's own functions. */
export const services = {
  kits: (brief: Brief, answer: Answer, shelf: Shelf): KitAnswer => {
    const plan = planKits(brief, answer, shelf);
    const rules = rulesOf(brief);
    const costs = costsOf(plan, shelf, rules);
    return { plan, ...(costs && { costs }), weight: bagWeight(plan, rules) };
  },
  class: (brief: Brief, answer: Answer) => {
    const plan = planClass(brief, answer);
    return { ...plan, everyone: linesOf(plan.everyone), students: plan.students.map(linesOf) };
  },
  ripple: rippleOf,
  leaving: (brief: Brief, answer: Answer, told: Omit<Left, "hash" | "facts">): Left =>
    leaving(brief, answer, told),
  correcting: (brief: Brief, answer: Answer, day: string): Left[] =>
    correcting(brief, answer, rippleOf(brief, answer), day),
  pdf: async (printing: Printing, paper: ShopPaper): Promise<Uint8Array<ArrayBuffer>> => {
    writing ??= writer();
    const { fonts, writePdf } = await writing;
    const bytes = await writePdf(sheetsOf(printing, paper), {
      fonts,
      created: new Date(`${printing.day}T12:00:00Z`),
      version: printing.version,
    });
    return bytes as Uint8Array<ArrayBuffer>;
  },
};
