export { studentSheet, teacherSheet } from "./classSheets.ts";
export { correctionSheet } from "./correction.ts";
export { costSheet } from "./costSheet.ts";
export type { KitJob } from "./kitJob.ts";
export { kitLabels, type LabelOptions } from "./labels.ts";
export { runSheet } from "./runSheet.ts";
