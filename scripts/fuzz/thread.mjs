// A worker thread does not inherit tsx from the process that starts it.
import { register } from "tsx/esm/api";

register();
await import("./worker.ts");
