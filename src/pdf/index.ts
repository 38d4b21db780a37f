export { pdfFiles } from "./files.ts";
export { type FaceFiles, FONT_PATHS, type FontFiles } from "./fonts.ts";
export { type PdfOptions, writePdf } from "./write.ts";
