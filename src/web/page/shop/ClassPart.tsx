import { Fragment, useCallback } from "react";
import type { Brief, ClassText, StudentText } from "../../../core/brief/index.ts";
import { parseLength, printWithUnit, stepOf } from "../../../core/measure/index.ts";
import {
  ratesOf,
  readPointText,
  STOP_AT_HOME,
  sayMinutes,
  sayPointText,
  sayStepOut,
} from "../../../core/shop/index.ts";
import type { KeepStore } from "../../keep/index.ts";
import type { Answered } from "../answers.ts";
import { Said } from "../said.tsx";
import { shopWorker, useAsked } from "./asking.ts";
import { Act, Field, Papers, Part, Pick } from "./parts.tsx";
import type { StudentLines } from "./services.ts";

const change = (keep: KeepStore, words: string, next: Partial<ClassText>): void =>
  keep.act.edit(words, (b) => {
    b.class = { hours: 3, irons: 1, blocks: 1, ...b.class, ...next };
  });

/** A student with what is not said left out. */
const tidy = (s: StudentText): StudentText =>
  Object.fromEntries(
    Object.entries(s).filter(([, v]) => v !== undefined),
  ) as unknown as StudentText;

const whole = (most: number) => (text: string) =>
  /^\d{1,3}$/.test(text) && Number(text) > 0 && Number(text) <= most
    ? undefined
    : `a whole number from 1 to ${most}`;

/** What everyone brings and cuts at home, what the teacher prepares, how long it takes, each seam. */
export function ClassPart({ now, keep }: { now: Answered; keep: KeepStore }) {
  const { brief, answer } = now;
  const asked = useAsked(
    useCallback(() => shopWorker.ask("class", "class", brief, answer), [brief, answer]),
  );
  const room = { hours: 3, irons: 1, blocks: 1, students: [], ...brief.class };
  const plan = asked.value;
  const step = stepOf(brief.step, brief.unit);
  return (
    <Part heading="And how is it taught?" trade={`a class on ${brief.title}`}>
      <p className="shop-sentence">
        A class of{" "}
        <Field
          label="Hours of the class"
          value={String(room.hours)}
          problem={(t) =>
            Number(t) >= 0.5 && Number(t) <= 60 ? undefined : "hours from 0.5 to 60"
          }
          onTake={(t) => change(keep, "the hours of the class", { hours: Number(t) })}
        />{" "}
        hours with{" "}
        <Field
          label="Irons in the room"
          value={String(room.irons)}
          problem={whole(60)}
          onTake={(t) => change(keep, "the irons in the room", { irons: Number(t) })}
        />{" "}
        {room.irons === 1 ? "iron" : "irons"}; each student means to finish{" "}
        <Field
          label="Blocks of each kind each student means to finish"
          value={String(room.blocks)}
          problem={whole(999)}
          onTake={(t) => change(keep, "the blocks of the class", { blocks: Number(t) })}
        />{" "}
        of each kind of block.
      </p>
      <p className="soft small" role="status">
        {asked.busy && "Working it out. "}
        {asked.failed && `It could not be worked out: ${asked.failed}.`}
      </p>
      {plan && (
        <>
          <p className="line">
            <b>
              About {sayMinutes(plan.minutes)}; in {sayMinutes(plan.hours * 60)} a student finishes{" "}
              {plan.finished === 0 ? "none" : `${plan.finished} of each kind`}.
            </b>{" "}
            {plan.stages.some((s) => s.queue)
              ? `The room waits at the iron: ${plan.stages
                  .filter((s) => s.queue)
                  .map((s) => s.name)
                  .join(", ")}.`
              : "Nobody waits at the iron."}{" "}
            Every minute is an estimate.
          </p>
          <details>
            <summary className="touch">Minutes by stage</summary>
            <RatesOf brief={brief} keep={keep} />
            <ul className="told">
              {plan.stages.map((s) => (
                <li key={s.name}>
                  {s.name}: {sayMinutes(s.inClass)}
                  {s.queue && `, of which ${sayMinutes(s.inClass - s.own)} at the iron's queue`}
                </li>
              ))}
            </ul>
          </details>
          <details>
            <summary className="touch">Step-outs to prepare</summary>
            <ul className="told">
              {plan.stepOuts.samples.map((s) => (
                <li key={s.unitId}>
                  <Said text={sayStepOut(s)} />
                </li>
              ))}
              {plan.stepOuts.fabric.map((f) => (
                <li key={f.fabricId}>
                  <Said
                    text={`${f.letter} ${f.name}, ${printWithUnit(f.length, step)} for all of them`}
                  />
                </li>
              ))}
            </ul>
          </details>
          <Lines s={plan.everyone} heading="Everyone brings" />
        </>
      )}
      <Students brief={brief} keep={keep} lines={plan?.students ?? []} />
      <Papers
        shown={now}
        papers={[
          { words: "The teacher's sheet", name: "class-teacher", paper: { what: "teacher" } },
          {
            words: "A list for everyone and each student",
            name: "class-lists",
            paper: { what: "students" },
          },
        ]}
      />
    </Part>
  );
}

const RATES = [
  ["seam", "perSeam", "a seam", "for each seam: pinning and matching"],
  ["inch", "perInch", "an inch of it", "for each inch of seam under the needle"],
  ["press", "perPress", "a press", "for each seam at the iron"],
  ["step", "perStep", "a step", "for each step: laying out, measuring, reading"],
  ["cut", "perCut", "a cut", "for each cut in class"],
] as const;

/** How fast the class is taken to be: estimates until the teacher puts in her own. */
function RatesOf({ brief, keep }: { brief: Brief; keep: KeepStore }) {
  const rates = ratesOf(brief);
  return (
    <p className="shop-sentence">
      Minutes are estimates, until you put in your own:{" "}
      {RATES.map(([name, at, words, label], i) => (
        <Fragment key={name}>
          {i > 0 && ", "}
          <Field
            label={`Minutes ${label}`}
            value={String(Number(rates[at].toFixed(4)))}
            problem={(t) =>
              t !== "" && Number(t) >= 0 && Number(t) <= 60 ? undefined : "minutes from 0 to 60"
            }
            onTake={(t) =>
              change(keep, `the minutes of ${words}`, {
                rates: { ...brief.class?.rates, [name]: Number(t) },
              })
            }
          />{" "}
          {words}
        </Fragment>
      ))}
      .
    </p>
  );
}

function Lines({ s, heading }: { s: StudentLines; heading: string }) {
  return (
    <details>
      <summary className="touch">{heading}</summary>
      <ul className="told">
        {s.supplies.map((x) => (
          <li key={x.fabricId}>
            <Said text={`${x.letter} ${x.name}, ${x.buy}: ${x.uses}`} />
          </li>
        ))}
      </ul>
      <p>
        <Said text={`${s.tools.join("; ")}.`} />
      </p>
      <h3>Cut at home</h3>
      <ul className="told">
        {s.homework.map((h) => (
          <li key={h.fabricId}>
            <Said text={`${h.letter} ${h.name}: ${h.cuts.join("; ")}`} />
          </li>
        ))}
      </ul>
      <p>
        <b>{STOP_AT_HOME}</b>
      </p>
    </details>
  );
}

interface StudentsProps {
  readonly brief: Brief;
  readonly keep: KeepStore;
  readonly lines: readonly StudentLines[];
}

/** Each student: her fabric, her ruler's longest line, her size, and what her test strips measured. */
function Students({ brief, keep, lines }: StudentsProps) {
  const students = brief.class?.students ?? [];
  const set = (words: string, next: readonly StudentText[]): void =>
    change(keep, words, { students: next.map(tidy) });
  const one = (i: number, words: string, next: Partial<StudentText>): void =>
    set(
      words,
      students.map((s, k) => (k === i ? { ...s, ...next } : s)),
    );
  const length = (text: string): string | undefined => {
    if (text === "") return undefined;
    const r = parseLength(text, brief.unit);
    return r.ok && r.length.value.compare(0) > 0 ? undefined : `"${text}" is not a length`;
  };
  const tops = brief.sizes ?? [];
  const width = brief.unit === "in" ? "1 1/2" : "40";
  return (
    <>
      <h3>Students</h3>
      <ul className="students">
        {students.map((s, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two students may have one name
          <li key={i}>
            <p>
              <Field
                wide
                label={`Name of student ${i + 1}`}
                value={s.name}
                problem={(t) => (t === "" ? "she needs a name" : undefined)}
                onTake={(name) => one(i, "a student's name", { name })}
              />{" "}
              fabric{" "}
              <Field
                label={`Usable width of the fabric of ${s.name}`}
                value={s.usable ?? ""}
                hint="as designed"
                problem={length}
                onTake={(t) => one(i, `the fabric of ${s.name}`, { usable: t || undefined })}
              />
              , ruler up to{" "}
              <Field
                label={`Longest line of the ruler of ${s.name}`}
                value={s.longest ?? ""}
                hint="as designed"
                problem={length}
                onTake={(t) => one(i, `the ruler of ${s.name}`, { longest: t || undefined })}
              />{" "}
              with a point{" "}
              <Field
                label={`Point of the ruler of ${s.name}`}
                value={sayPointText(s.point)}
                hint="as designed"
                problem={(t) =>
                  t === "" || readPointText(t, brief.unit)
                    ? undefined
                    : "sharp, blunt, blunt:3/16 or flat:3/8"
                }
                onTake={(t) =>
                  one(i, `the point of the ruler of ${s.name}`, {
                    point: t === "" ? undefined : readPointText(t, brief.unit),
                  })
                }
              />
              {tops.length > 0 && (
                <>
                  , size{" "}
                  <Pick
                    label={`Size of ${s.name}`}
                    value={s.top ?? ""}
                    options={[
                      ["", "as designed"],
                      ...tops.map((t): [string, string] => [t.name, t.name]),
                    ]}
                    onPick={(v) => one(i, `the size of ${s.name}`, { top: v || undefined })}
                  />
                </>
              )}
              ; three strips of {width} measured{" "}
              <Field
                label={`Three strips of ${s.name} measured`}
                value={s.test?.size ?? ""}
                hint="not yet"
                problem={length}
                onTake={(t) =>
                  one(i, `the seam test of ${s.name}`, {
                    test: t === "" ? undefined : { strips: 3, width, size: t },
                  })
                }
              />{" "}
              <button
                type="button"
                className="touch tall"
                aria-label={`Take ${s.name} off the list`}
                onClick={() =>
                  set(
                    `${s.name} off the list`,
                    students.filter((_, k) => k !== i),
                  )
                }
              >
                Take off
              </button>
            </p>
            {lines[i] && lines[i].seam.length > 0 && (
              <p className="seam-says">
                <Said text={lines[i].seam.slice(1).join(" ")} />
              </p>
            )}
            {lines[i] && lines[i].own.length > 0 && (
              <Lines s={lines[i]} heading={`${s.name} brings (${lines[i].own.join(", ")})`} />
            )}
          </li>
        ))}
      </ul>
      <p className="acts">
        <Act
          disabled={students.length >= 60}
          onClick={() =>
            set("a student", [...students, { name: `Student ${students.length + 1}` }])
          }
        >
          Add a student
        </Act>
      </p>
    </>
  );
}
