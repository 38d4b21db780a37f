export { CoverBody } from "./CoverBody.tsx";
export { EnoughBody } from "./EnoughBody.tsx";
export { LookBody } from "./LookBody.tsx";
export { MeasureBody } from "./MeasureBody.tsx";
export { OrderBody } from "./OrderBody.tsx";
export { SizeBody } from "./SizeBody.tsx";
