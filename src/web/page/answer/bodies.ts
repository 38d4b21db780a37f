export { CoverBody } from "./CoverBody.tsx";
export { EnoughBody } from "./EnoughBody.tsx";
export { LookBody } from "./LookBody.tsx";
export { SizeBody } from "./SizeBody.tsx";
export { MakeSizeBody } from "./sewing/MakeSizeBody.tsx";
export { MeasureBody } from "./sewing/MeasureBody.tsx";
export { OrderBody } from "./sewing/OrderBody.tsx";
export { WhyBody } from "./sewing/WhyBody.tsx";
