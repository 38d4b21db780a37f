import type { Answer } from "../../src/core/answer/index.ts";
import type { Brief } from "../../src/core/brief/index.ts";
import { say } from "../../src/core/findings/index.ts";
import { stepOf } from "../../src/core/measure/index.ts";
import { type SheetJob, sheetJob } from "../../src/core/sheet/index.ts";
import {
  correctionSheet,
  costSheet,
  kitLabels,
  runSheet,
  studentSheet,
  teacherSheet,
} from "../../src/core/sheet/shop/index.ts";
import {
  afterRun,
  costsOf,
  LABEL_SHEETS,
  planClass,
  planKits,
  readShelf,
  rippleOf,
  rulesOf,
  sayChanged,
  sayCosts,
  sayHomework,
  sayLeftThing,
  sayPlan,
  sayRipple,
  saySeam,
  saySupplies,
  sayTime,
  sayWay,
  shelfCsv,
} from "../../src/core/shop/index.ts";
import { infinite, type Law, slips } from "./laws.ts";

const BOLTS = "fabric,width,length,cost\nReef,40,9,12.95\nFoam & spray,42,4 1/2,\nMoos,36,300,1";

/** What holds of all that is made of a design for a shop and a class, whatever they decide. */
export const SHOP_LAWS: Readonly<Record<string, Law>> = {
  "every kit is cut from what there is, and said in numbers": (brief, answer) => {
    const { shelf } = readShelf(BOLTS, brief.unit);
    const plan = planKits(brief, answer, shelf);
    const rules = rulesOf(brief);
    const costs = costsOf(plan, shelf, rules);
    const said = [
      ...sayPlan(plan, brief),
      ...plan.ways.map((w) => sayWay(w, plan, shelf)),
      ...(costs ? sayCosts(costs, rules, brief) : []),
      ...plan.findings.map((f) => say(f, { step: stepOf(brief.step, brief.unit) })),
    ];
    const over = plan.runs.filter(
      (r) => r.used + r.left !== r.length || r.left < 0 || r.cuts.some((c) => c.length <= 0),
    );
    const after = afterRun(shelf, plan);
    const again = readShelf(shelfCsv(after), brief.unit).shelf;
    const job = jobOf(brief, answer);
    const kit = { job, plan, shelf, rules };
    const sheets = [
      runSheet(kit),
      costSheet(kit),
      ...(plan.kits > 0 ? [kitLabels(kit, { sheet: LABEL_SHEETS[0], first: 1 })] : []),
    ];
    return [
      ...infinite(plan, "plan"),
      ...over.map((r) => `${r.name}: ${r.used} and ${r.left} of ${r.length}`),
      ...(plan.kits > plan.most ? [`${plan.kits} kits where there are ${plan.most}`] : []),
      ...(again.bolts.length === after.bolts.length ? [] : ["the shelf does not read back"]),
      ...said.filter((line) => slips(line, brief)),
      ...sheets.flatMap((s) => infinite(s, s.name)),
    ];
  },

  "a class is planned, and said in numbers": (brief, answer) => {
    const plan = planClass(brief, answer);
    const job = jobOf(brief, answer);
    const all = [plan.everyone, ...plan.students];
    const said = [
      ...sayTime(plan),
      ...all.flatMap((s) => [...saySupplies(s), ...sayHomework(s)]),
      ...all.flatMap((s) => (s.seam ? saySeam(s.seam, brief) : [])),
    ];
    const sheets = [teacherSheet(job, plan), ...all.map((s) => studentSheet(job, s))];
    return [
      ...infinite(plan.stages, "stages"),
      ...said.filter((line) => slips(line, brief)),
      ...sheets.flatMap((s) => infinite(s, s.name)),
      ...sheets.filter((s) => !/^[a-z0-9-]+$/.test(s.name)).map((s) => `a file called ${s.name}`),
    ];
  },

  "what left the design is held against it": (brief, answer) => {
    const wrong = rippleOf(brief, answer);
    const said = [
      sayRipple(wrong),
      ...wrong.flatMap((w) => [sayLeftThing(w.left), ...w.changes.map(sayChanged)]),
    ];
    const sheets = wrong.length > 0 ? [correctionSheet(jobOf(brief, answer), wrong)] : [];
    return [
      ...said.filter((line) => slips(line, brief)),
      ...sheets.flatMap((s) => infinite(s, s.name)),
    ];
  },
};

const jobOf = (brief: Brief, answer: Answer): SheetJob =>
  sheetJob(brief, answer, { version: "1", date: "November 25, 2026" });
