export { pdfFiles } from "./files.ts";
export { FONT_PATHS, type FaceFiles, type FontFiles } from "./fonts.ts";
export { type PdfOptions, writePdf } from "./write.ts";
