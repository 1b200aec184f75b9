import 'ohm-js';

// ohm-js 17.5 exports makeRecipe, but its type declarations leave it out.
declare module 'ohm-js' {
  /** A grammar from the text that `Grammar.toRecipe()` gave. */
  export function makeRecipe(recipe: string): Grammar;
}
