import {
  type AlikeOctagon,
  type AlikeSearch,
  mostDifferent,
  type Pixels,
} from "../../../../core/fabric/index.ts";
import { canvasOf } from "./pixels.ts";

/** A search whose picture is still a data: address. */
export interface AlikeAsk extends Omit<AlikeSearch, "pixels"> {
  readonly data: string;
}

export type AlikeReply =
  | { readonly reply: "progress"; readonly done: number }
  | { readonly reply: "failed"; readonly message: string }
  | { readonly reply: "found"; readonly octagons: readonly AlikeOctagon[] };

/** Longer side of the picture that is searched, in pixels: finer detail is not told apart in a wedge. */
const LONGEST = 600;

const post = (r: AlikeReply): void => postMessage(r);

addEventListener("message", async ({ data: ask }: MessageEvent<AlikeAsk>) => {
  try {
    const work = mostDifferent({ ...ask, pixels: await pixelsOf(ask.data) });
    for (;;) {
      const step = work.next();
      if (step.done) return post({ reply: "found", octagons: step.value });
      post({ reply: "progress", done: step.value.done });
    }
  } catch (e) {
    post({ reply: "failed", message: (e as Error).message });
  }
});

async function pixelsOf(data: string): Promise<Pixels> {
  const { canvas, context } = await canvasOf(data, LONGEST);
  const { width, height } = canvas;
  return { width, height, data: context.getImageData(0, 0, width, height).data };
}
