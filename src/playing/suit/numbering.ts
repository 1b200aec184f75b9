/** Numbers lists of codes: equal lists, equal numbers. */
export class Numbering {
  /** The lists by their numbers. */
  readonly all: (readonly number[])[] = [];
  private readonly root = leaf();

  of(codes: readonly number[]): number {
    let at = this.root;
    for (const code of codes) {
      let next = at.next.get(code);
      if (!next) at.next.set(code, (next = leaf()));
      at = next;
    }
    if (at.number < 0) at.number = this.all.push(codes) - 1;
    return at.number;
  }
}

interface Leaf {
  readonly next: Map<number, Leaf>;
  number: number;
}

function leaf(): Leaf {
  return { next: new Map(), number: -1 };
}
