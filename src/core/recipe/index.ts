export * from "./chart.ts";
export * from "./choose.ts";
export * from "./demand-types.ts";
export type { RecipeChoice, RecipeFabric, RecipesInput, WedgeFacts } from "./input.ts";
export * from "./proof.ts";
export * from "./recipes.ts";
export * from "./rule.ts";
export * from "./ruler.ts";
export * from "./types.ts";
