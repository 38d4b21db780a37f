import { type Zippable, zipSync } from "fflate";
import { useCallback, useEffect, useRef, useState } from "react";
import type { SheetName } from "../../../core/sheet/index.ts";
import { handOver } from "../../keep/index.ts";
import { sayAloud } from "../view.ts";
import { newSetter } from "./asking.ts";
import type { Printing } from "./services.ts";

/** What is being written, how far it is, and how it ended. */
export interface Writing {
  readonly what: string;
  readonly done: number;
  readonly of: number;
  readonly state: "writing" | "done" | "stopped" | "failed";
  readonly why?: string;
}

const TYPES: Readonly<Record<string, string>> = {
  pdf: "application/pdf",
  svg: "image/svg+xml",
  dxf: "image/vnd.dxf",
  csv: "text/csv;charset=utf-8",
  json: "application/json",
  zip: "application/zip",
};

const typeOf = (name: string): string => TYPES[name.replace(/^.*\./, "")] ?? "text/plain";

export type Form = "svg" | "dxf" | "csv" | "json";

const encoded = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Many files as one, each dated as printed, so that equal files make equal archives. */
function packed(files: readonly (readonly [string, Uint8Array])[], day: string): Uint8Array {
  const list: Zippable = Object.fromEntries(files);
  return zipSync(list, { mtime: new Date(`${day}T12:00:00`) });
}

class Stopped extends Error {}

/** Writes files in a worker, sheet by sheet, and hands them to the browser's downloads. */
export function useFiles(printing: Printing, slug: string) {
  const [setter] = useState(newSetter);
  const [writing, setWriting] = useState<Writing | null>(null);
  const turn = useRef(0);
  useEffect(() => () => setter.stop(), [setter]);

  const pdf = useCallback(
    async (name: SheetName): Promise<Uint8Array<ArrayBuffer>> => {
      const outcome = await setter.ask("file", "pdf", printing, name);
      if (outcome.kind === "superseded") throw new Stopped();
      if (outcome.kind === "failed") throw new Error(outcome.failure.message);
      return outcome.value;
    },
    [setter, printing],
  );
  const forms = useCallback(async (): Promise<[string, Uint8Array][]> => {
    const outcome = await setter.ask("file", "forms", printing);
    if (outcome.kind === "superseded") throw new Stopped();
    if (outcome.kind === "failed") throw new Error(outcome.failure.message);
    return outcome.value.map(([name, text]) => [name, encoded(text)]);
  }, [setter, printing]);

  /** Runs a task of some parts, telling how far it is; a newer task takes the place of an older one. */
  const run = useCallback(
    async (what: string, of: number, task: (part: () => void) => Promise<void>) => {
      const mine = ++turn.current;
      const tell = (w: Writing): void => {
        if (turn.current === mine) setWriting(w);
      };
      let done = 0;
      tell({ what, done, of, state: "writing" });
      try {
        await task(() => tell({ what, done: ++done, of, state: "writing" }));
        tell({ what, done: of, of, state: "done" });
        sayAloud(`${what}: done.`);
      } catch (error) {
        if (error instanceof Stopped) tell({ what, done, of, state: "stopped" });
        else tell({ what, done, of, state: "failed", why: (error as Error).message });
      }
    },
    [],
  );

  const onePdf = (name: SheetName) =>
    run(`${name}.pdf`, 1, async () => give(`${slug}-${name}.pdf`, await pdf(name)));

  /** Opens the file in a tab of its own, where the browser prints it as it is. */
  const toPrint = (name: SheetName) => {
    const tab = open("", "_blank");
    return run(`${name}.pdf`, 1, async () => {
      const bytes = await pdf(name).catch((error) => {
        tab?.close();
        throw error;
      });
      const url = URL.createObjectURL(new Blob([bytes], { type: typeOf("x.pdf") }));
      if (tab) tab.location.href = url;
      else give(`${slug}-${name}.pdf`, bytes);
    });
  };

  const everything = (names: readonly SheetName[]) =>
    run("everything", names.length + 1, async (part) => {
      const files: [string, Uint8Array][] = await forms();
      part();
      for (const name of names) {
        files.push([`${name}.pdf`, await pdf(name)]);
        part();
      }
      give(`${slug}.zip`, packed(files, printing.day));
    });

  const oneForm = (form: Form) =>
    run(form.toUpperCase(), 1, async () => {
      const files = (await forms()).filter(([name]) => name.endsWith(`.${form}`));
      const [only] = files;
      if (!only) throw new Error("there is nothing of this kind in the design");
      if (files.length === 1) give(`${slug}-${only[0]}`, only[1]);
      else give(`${slug}-${form}.zip`, packed(files, printing.day));
    });

  const stop = useCallback(() => setter.stop(), [setter]);
  return { writing, stop, onePdf, toPrint, everything, oneForm };
}

const give = (name: string, bytes: Uint8Array): void =>
  handOver(name, bytes as Uint8Array<ArrayBuffer>, typeOf(name));
