import { expect } from 'chai';
import type {
  FileAddress,
  GitApi,
  GitCommit,
  GitExports,
  GitRepository,
} from '../../../src/extension/git/gitApi';
import { keptFile, textIn, versionsOf } from '../../../src/extension/git/gitVersions';

const at = (fsPath: string, scheme = 'file'): FileAddress => ({ scheme, fsPath });

const SONG = at('/songs/lantern.pegbox');

const COMMITS: readonly GitCommit[] = [
  {
    hash: '4b825dc642cb6eb9a060e54bf8d69288fbee4904',
    message: 'Slower verse\n\nAfter the rehearsal.',
    authorDate: new Date('2026-03-02T10:00:00Z'),
  },
  { hash: 'a94a8fe5ccb19ba61c4c0873d391e987982fbbd3', message: '' },
];

function repository(commits: readonly GitCommit[], texts: Readonly<Record<string, string>>): GitRepository {
  return {
    log: ({ path }) => Promise.resolve(path === SONG.fsPath ? commits : []),
    show: (ref) => {
      const text = texts[ref];
      return text === undefined ? Promise.reject(new Error('fatal: bad object')) : Promise.resolve(text);
    },
  };
}

/** The editor's extension as it is once the editor has started. */
function extension(api: Partial<GitApi>, enabled = true): Parameters<typeof keptFile>[0] {
  const exports: GitExports = {
    enabled,
    getAPI: () => ({
      state: 'initialized',
      onDidChangeState: () => ({ dispose: () => undefined }),
      getRepository: () => null,
      ...api,
    }),
  };
  return { isActive: true, exports, activate: () => Promise.resolve(exports) };
}

/** What a promise is refused with. */
async function refusal(asked: Promise<unknown>): Promise<string> {
  try {
    await asked;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  return 'nothing was refused';
}

describe('versions that Git keeps of a tab', () => {
  const kept = repository(COMMITS, { HEAD: 'title: Lantern\n' });

  it('are listed by what their author wrote, with hash and day', async () => {
    const file = await keptFile(extension({ getRepository: () => kept }), SONG);
    expect(await versionsOf(file)).to.deep.equal([
      { ref: COMMITS[0]?.hash, title: 'Slower verse', when: '4b825dc, 2026-03-02' },
      { ref: COMMITS[1]?.hash, title: 'Without words', when: 'a94a8fe' },
    ]);
  });

  it('give the text of the file, and a sentence where it was not there yet', async () => {
    const file = await keptFile(extension({ getRepository: () => kept }), SONG);
    expect(await textIn(file, 'HEAD')).to.equal('title: Lantern\n');
    expect(await refusal(textIn(file, 'HEAD~9'))).to.match(
      /^Git has no text of this file in the version HEAD~9:/,
    );
  });

  it('are waited for while the editor still looks for repositories', async () => {
    let state: GitApi['state'] = 'uninitialized';
    const listeners: (() => void)[] = [];
    const api: GitApi = {
      get state() {
        return state;
      },
      onDidChangeState: (listener) => {
        listeners.push(listener);
        return { dispose: () => listeners.splice(0) };
      },
      getRepository: () => (state === 'initialized' ? kept : null),
    };
    const exports: GitExports = { enabled: true, getAPI: () => api };
    const file = keptFile({ isActive: false, exports, activate: () => Promise.resolve(exports) }, SONG);
    await Promise.resolve();
    await Promise.resolve();
    expect(listeners).to.have.length(1);
    state = 'initialized';
    for (const listener of [...listeners]) listener();
    expect((await file).repository).to.equal(kept);
    expect(listeners).to.have.length(0);
  });

  it('are none where Git is not, and a sentence says what to do', async () => {
    const empty = repository([], {});
    const log = (): Promise<never> => Promise.reject(new Error('fatal: your branch has no commits yet'));
    const cases: readonly [Promise<unknown>, RegExp][] = [
      [keptFile(undefined, SONG), /^This editor comes without Git.*Compare With….*\.$/],
      [
        keptFile(extension({}, false), SONG),
        /^Git is turned off in this editor, or not installed: .*git\.enabled/,
      ],
      [
        keptFile(extension({}), SONG),
        /^This file is in no Git repository.*: open the folder that holds it\.$/,
      ],
      [keptFile(extension({}), at('Untitled-1', 'untitled')), /^Save the tab in a folder that Git keeps/],
      [
        versionsOf({ repository: empty, path: SONG.fsPath }),
        /^Git keeps no version of this file yet: commit it/,
      ],
      [
        versionsOf({ repository: { ...empty, log }, path: SONG.fsPath }),
        /^Git keeps no version of this file yet/,
      ],
    ];
    for (const [asked, told] of cases) expect(await refusal(asked)).to.match(told);
  });
});
