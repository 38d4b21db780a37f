import tidepool from "../../examples/tidepool-runner.json";

/** The sample a new maker starts from: one of the examples, so that it is always tested. */
export const SAMPLE: unknown = tidepool;
