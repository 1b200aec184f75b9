// Compiles src/notation/pegbox.ohm into the recipe that ships. `node src/tools/grammar.mjs` after each change of the
// grammar; a test fails while the two differ.
import { readFile, writeFile, mkdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { grammar } from 'ohm-js';

const GRAMMAR = new URL('../notation/pegbox.ohm', import.meta.url);
const RECIPE = new URL('../notation/generated/pegboxRecipe.ts', import.meta.url);

/** The text of the recipe module for the grammar as it stands. */
export async function recipeModule() {
  /** @type {import('ohm-js').Grammar & { toRecipe?: () => string }} its types leave toRecipe out */
  const compiled = grammar(await readFile(GRAMMAR, 'utf8'));
  const recipe = compiled.toRecipe?.();
  return `// Made by src/tools/grammar.mjs from src/notation/pegbox.ohm. Do not edit.
/* eslint-disable */
// prettier-ignore
export const PEGBOX_RECIPE: string =
${JSON.stringify(recipe)};
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await mkdir(new URL('.', RECIPE), { recursive: true });
  await writeFile(RECIPE, await recipeModule());
}
