import { type SizeStudy, sampleSize } from "../../../../core/answer/sewing/make-size.ts";
import type { MakeSizeAnswer } from "../../../../core/sewing/makeSize.ts";

export type SizeReply =
  | { readonly reply: "progress"; readonly done: number }
  | { readonly reply: "failed"; readonly message: string }
  | { readonly reply: "sewn"; readonly answer: MakeSizeAnswer };

const post = (r: SizeReply): void => postMessage(r);

addEventListener("message", ({ data: study }: MessageEvent<SizeStudy>) => {
  try {
    const work = sampleSize(study);
    for (;;) {
      const step = work.next();
      if (step.done) return post({ reply: "sewn", answer: step.value });
      post({ reply: "progress", done: step.value / study.samples });
    }
  } catch (e) {
    post({ reply: "failed", message: (e as Error).message });
  }
});
