import { type Sight, seenPixels } from "../../../../core/fabric/index.ts";
import { canvasOf } from "./pixels.ts";

export interface SeenAsk {
  readonly data: string;
  readonly sight: Sight;
}

/** The picture as it is seen; nothing where it cannot be decoded. */
export interface SeenReply extends SeenAsk {
  readonly seen?: string;
}

addEventListener("message", async ({ data: ask }: MessageEvent<SeenAsk>) => {
  const reply = (seen?: string): void => postMessage({ ...ask, ...(seen && { seen }) });
  try {
    const { canvas, context } = await canvasOf(ask.data);
    const image = context.getImageData(0, 0, canvas.width, canvas.height);
    seenPixels(image.data, ask.sight);
    context.putImageData(image, 0, 0);
    const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.85 });
    reply(new FileReaderSync().readAsDataURL(blob));
  } catch {
    reply();
  }
});
