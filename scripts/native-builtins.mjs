// The reader of PDF files brings an Array push and a JSON parse of its own, written out in the language,
// and puts them in the place of the engine's: everything that runs after it in the same worker would be
// slower, and would not be what makers run. It is loaded before any test, and the engine's put back.
const { push } = Array.prototype;
const { parse } = JSON;
await import("pdfjs-dist/legacy/build/pdf.mjs");
await import("pdfjs-dist/legacy/build/pdf.worker.mjs");
Array.prototype.push = push;
JSON.parse = parse;
