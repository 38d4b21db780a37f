// Builds the page if needed, serves it on loopback and prints its address.
//   npm start                  a free port
//   npm start -- --port 8080   that port
import { parseArgs } from "node:util";
import { buildIfNeeded, needsBuild, PAGE } from "./build-web.mjs";
import { serve } from "./serve.mjs";

const USAGE = "usage: npm start [-- --port NUMBER]";

function readPort() {
  try {
    const { values } = parseArgs({ options: { port: { type: "string", default: "0" } } });
    const port = Number(values.port);
    if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
    throw new Error(`a port is a number from 0 to 65535, got ${values.port}`);
  } catch (error) {
    console.error(`${error.message}\n${USAGE}`);
    process.exit(2);
  }
}

try {
  const port = readPort();
  if (needsBuild(PAGE)) console.error("Building the page.");
  buildIfNeeded(PAGE);
  const { address, close } = await serve(PAGE.out, { port });
  console.log(address);
  console.error("Ctrl+C stops it. Once opened, the page also works without it.");
  for (const signal of ["SIGINT", "SIGTERM"])
    process.once(signal, () => close().then(() => process.exit(0)));
} catch (error) {
  console.error(
    error.code === "EADDRINUSE" ? "This port is taken; choose another." : error.message,
  );
  process.exit(3);
}
