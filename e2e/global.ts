import { buildIfNeeded, PAGE } from "../scripts/build-web.mjs";
import { LAYERS } from "./harness.ts";

/** Before files run side by side: what several of them serve is built once. */
export default function setup(): void {
  buildIfNeeded(PAGE);
  buildIfNeeded(LAYERS, ["e2e/fixtures"]);
}
