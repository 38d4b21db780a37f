/**
 * The content security policy of the page, in one place: the build writes it into the HTML, the
 * server sends it as a header. Nothing inline, no other host; `wasm-unsafe-eval` lets the solver's
 * WebAssembly start and allows no script text.
 */
const rules = {
  "default-src": "'none'",
  "script-src": "'self' 'wasm-unsafe-eval'",
  "style-src": "'self'",
  "img-src": "'self' data: blob:",
  "font-src": "'self'",
  "connect-src": "'self'",
  "worker-src": "'self'",
  "manifest-src": "'self'",
  "base-uri": "'none'",
  "form-action": "'none'",
};

export const metaPolicy = Object.entries(rules)
  .map(([name, value]) => `${name} ${value}`)
  .join("; ");

/** Browsers heed `frame-ancestors` only in a header. */
export const headerPolicy = `${metaPolicy}; frame-ancestors 'none'`;
