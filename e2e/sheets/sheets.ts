import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
import { jobOf } from "../../src/core/sheet/job.testing.ts";
import { webFonts } from "../../src/pdf/fonts.web.ts";
import { pdfFiles } from "../../src/pdf/index.ts";

declare global {
  interface Window {
    /** Hash of every sheet of a brief, made here. */
    hashesOf?: (brief: string) => Promise<Record<string, string>>;
  }
}

window.hashesOf = async (brief) => {
  const created = new Date(Date.UTC(2026, 10, 25));
  const files = await pdfFiles(jobOf(brief), { fonts: await webFonts(), created, compress: false });
  return Object.fromEntries([...files].map(([name, bytes]) => [name, bytesToHex(sha256(bytes))]));
};
