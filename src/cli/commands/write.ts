import type { Command } from '../command';
import { PIECE_OPTIONS, VALUE, writePiece } from '../emptyPiece';

/** Writes notes as tab. */
export const write: Command = {
  name: 'write',
  does: 'write notes that are named, such as D4 E4 F#4 or the degrees 1 2 b3, as fingered tab',
  operands: {
    word: 'NOTES…',
    help: 'D4, D (nearest to the one before) or b3 (in --key); D3+A3 together, - rings on, . silence, D4:q a length of its own, | next bar',
    many: true,
  },
  options: [VALUE, ...PIECE_OPTIONS],
  async run(asked, output) {
    const value = asked.values.get('value');
    const text = asked.operands.join(' ');
    return writePiece(asked, output, ({ service, document, place, settings }) =>
      service.writeNotes(document, place, { text, ...(value !== undefined && { value }) }, settings),
    );
  },
};
