import assert from 'node:assert/strict';
import type { MadeChange } from '../../src/server/requests';
import type { RingingAnswer } from '../../src/service/ringing/ringingAnswer';
import type { ServiceError } from '../../src/service/serviceApi';
import type { SingerAnswer } from '../../src/service/singer/singerAnswer';
import { TestClient } from './testClient';

const uri = 'file:///singer.pegbox';
const TEXT =
  'key: G\n\nchords |G   |\nE4     |3---|\nB3     |0---|\nG3     |0---|\nD3     |0---|\nA2     |2---|\nE2     |3---|\n';

describe('fitting a singer and strings that may ring, over the wire', () => {
  let client: TestClient;
  before(async () => {
    client = await TestClient.start();
    await client.opened(uri, TEXT);
  });
  after(async () => assert.equal(await client.stop(), 0));

  it('a way of the answer is a change of one line', async () => {
    const answer = await client.request<SingerAnswer>('pegbox/fitSinger', { uri, key: 'Bb' });
    const { capoBy, tuningBy } = answer.ways[0]?.request ?? {};
    const change = await client.request<MadeChange>('pegbox/applyFit', { uri, capoBy, tuningBy });
    assert.deepEqual(
      change.edits.map(({ newText }) => newText.trim()),
      ['capo: 3'],
    );
  });

  it('parameters of a wrong kind are told, and a document that is not open', async () => {
    const error = async (name: string, params: object): Promise<string> =>
      (await client.request<ServiceError>(name, params)).error;
    assert.equal(
      await error('pegbox/fitSinger', { uri, voice: 3 }),
      'The parameter voice was expected as text.',
    );
    assert.equal(
      await error('pegbox/applyFit', { uri, capoBy: 'up' }),
      'The parameter capoBy was expected as a number.',
    );
    for (const name of ['pegbox/fitSinger', 'pegbox/applyFit', 'pegbox/ringing'])
      assert.match(await error(name, { uri: 'file:///other.pegbox' }), /not open/);
  });

  it('ringing, for a place beyond the end too', async () => {
    const position = { line: 999, character: 0 };
    const { chords } = await client.request<RingingAnswer>('pegbox/ringing', { uri, position });
    assert.deepEqual(
      chords.map(({ name, where }) => [name, where]),
      [['G', 'bar 1']],
    );
  });
});
