import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser, servePage, tab } from "./harness.ts";

let site: Awaited<ReturnType<typeof servePage>>;
let browser: Awaited<ReturnType<typeof openBrowser>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([servePage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

test("a first plan at once; then the solver is loaded, and the plan is proved least", async () => {
  const profile = await browser.profile();
  const asked: string[] = [];
  profile.context.on("request", (r) => asked.push(r.url()));
  const solver = () => asked.some((url) => url.endsWith(".wasm"));
  const page = await tab(profile, site.address);
  const question = page.getByRole("button", { name: "Is there enough?" });
  await question.waitFor();
  expect(solver()).toBe(false);
  await question.click();
  const least = page.locator(".least");
  await least
    .getByText(/over the least/)
    .first()
    .waitFor();
  await least.getByRole("button", { name: "Stop, and keep this plan" }).waitFor();
  await least.getByText("Proved least.").waitFor();
  expect(solver()).toBe(true);
  expect(profile.complaints).toEqual([]);
  await profile.close();
});
