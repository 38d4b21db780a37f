import type { Answer } from "../../answer/index.ts";
import type { Brief } from "../../brief/index.ts";
import { blocksIn, stagesOf } from "./minutes.ts";
import { stepOutsOf } from "./stepOuts.ts";
import { studentPlan } from "./student.ts";
import type { ClassPlan } from "./types.ts";

/** The class in one object: everyone's list and homework, each student's own, samples, minutes, seams. */
export function planClass(brief: Brief, answer: Answer): ClassPlan {
  const { students = [], hours = 3, irons = 1, blocks = 1 } = brief.class ?? {};
  const size = Math.max(1, students.length);
  const room = { students: size, irons };
  const stages = stagesOf(brief, answer, { ...room, blocks });
  return {
    title: brief.title,
    everyone: studentPlan(brief, answer, { name: "everyone" }),
    students: students.map((s) => studentPlan(brief, answer, s)),
    size,
    stepOuts: stepOutsOf(brief, answer),
    stages,
    minutes: stages.reduce((t, s) => t + s.inClass, 0),
    hours,
    blocks,
    finished: blocksIn(brief, answer, hours * 60, room),
    irons,
  };
}
