import type { Io } from "./io.ts";
import { run } from "./run.ts";

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** The command line in this process, with `input` on its standard input and nobody to stop it. */
export async function ran(
  args: readonly string[],
  input: string | Uint8Array = "",
  io: Partial<Io> = {},
): Promise<Ran> {
  let [out, err] = ["", ""];
  const code = await run([...args], {
    input: async function* () {
      yield Buffer.from(input as string);
    },
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    signal: new AbortController().signal,
    ...io,
  });
  return { code, out, err };
}
