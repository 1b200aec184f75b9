/**
 * Remembers what was used last, in two generations so that memory stays bounded: what was asked for since the last
 * turn survives the next one, and at most twice `generation` entries are kept.
 * @example const recent = new Recent<string, number>(2); recent.set('a', 1); recent.get('a') // 1
 */
export class Recent<K, V> {
  private young = new Map<K, V>();
  private old = new Map<K, V>();

  constructor(private readonly generation: number) {}

  get(key: K): V | undefined {
    const value = this.young.get(key);
    if (value !== undefined) return value;
    const older = this.old.get(key);
    if (older !== undefined) this.set(key, older);
    return older;
  }

  set(key: K, value: V): void {
    if (this.young.size >= this.generation) {
      this.old = this.young;
      this.young = new Map();
    }
    this.young.set(key, value);
  }
}
