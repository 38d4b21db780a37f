export { Boundary } from "./Boundary.tsx";
