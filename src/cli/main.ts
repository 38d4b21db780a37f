import { EXIT } from "./exit.ts";
import { reason } from "./files.ts";
import { run } from "./run.ts";
import { inThread, planIfThread } from "./thread.ts";

if (!(await planIfThread())) {
  const stopping = new AbortController();
  process.once("SIGINT", () => stopping.abort());
  process.stdout.on("error", (e: NodeJS.ErrnoException) => {
    if (e.code === "EPIPE") process.exit(EXIT.fine);
    process.stderr.write(`eighthwise: cannot write the result: ${reason(e)}\n`);
    process.exit(EXIT.io);
  });
  process.exitCode = await run(process.argv.slice(2), {
    input: () => process.stdin,
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    signal: stopping.signal,
    terminal: process.stderr.isTTY === true,
    best: inThread(new URL(import.meta.url)),
  });
}
