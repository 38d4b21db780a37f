import { EXIT } from "./exit.ts";
import { run } from "./run.ts";
import { inThread, planIfThread } from "./thread.ts";

if (!(await planIfThread())) {
  const stopping = new AbortController();
  process.once("SIGINT", () => stopping.abort());
  process.stdout.on("error", (e: NodeJS.ErrnoException) =>
    process.exit(e.code === "EPIPE" ? EXIT.fine : EXIT.io),
  );
  process.exitCode = await run(process.argv.slice(2), {
    input: () => process.stdin,
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    signal: stopping.signal,
    terminal: process.stderr.isTTY === true,
    best: inThread(new URL(import.meta.url)),
  });
}
