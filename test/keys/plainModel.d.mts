/** Types of plainModel.mjs, for tests in TypeScript. */
export class PlainModel {
  constructor(text: string, line: number, character: number);
  readonly text: string;
  readonly line: number;
  readonly character: number;
  knows(key: string): boolean;
  press(key: string): void;
}
export function random(seed: number): () => number;
export function nextKey(model: PlainModel, next: () => number): string;
