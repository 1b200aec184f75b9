import { spawn } from 'node:child_process';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { FOLDER, fileWith, pegbox, PROGRAM, unreadable } from './pegbox';
import { FERRY, firstString } from './texts';

const COMMANDS = [
  'check',
  'notes',
  'convert',
  'transpose',
  'move-capo',
  'refinger',
  'simplify',
  'suit',
  'tuning',
  'chord',
  'grip',
];

describe('the command line', () => {
  it('shows its help, with every command', async () => {
    const { code, out, err } = await pegbox(['--help']);
    assert.equal(code, 0);
    assert.equal(err, '');
    for (const command of COMMANDS) assert.match(out, new RegExp(`^ {2}pegbox ${command} `, 'm'));
    assert.equal((await pegbox(['-h'])).out, out);
  });

  for (const command of COMMANDS)
    it(`shows the help of ${command}, whatever else is missing`, async () => {
      const { code, out, err } = await pegbox([command, '--help']);
      assert.equal(code, 0);
      assert.equal(err, '');
      assert.match(out, new RegExp(`^Usage: pegbox ${command} [^]*\\[--json\\]`, 'm'));
      assert.ok(
        out.split('\n').every((line) => line.length <= 130),
        out,
      );
    });

  it('tells its version', async () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    assert.deepEqual(await pegbox(['--version']), { code: 0, out: `${version}\n`, err: '' });
  });

  it('refuses a command it does not know and offers the nearest', async () => {
    assert.match(await unreadable(['chekc', 'a.pegbox']), /no command “chekc”.*check/);
    assert.match(await unreadable(['move_capo']), /Did you mean move-capo/);
    assert.match(await unreadable(['zzz']), /The commands are check, .*notes, /);
    assert.match(await unreadable([]), /Give a command: check, /);
    assert.match(await unreadable(['--versoin']), /--version/);
  });

  it('refuses an option it does not know and offers the nearest', async () => {
    assert.match(await unreadable(['check', '--jsno', 'a.pegbox']), /no option --jsno\. Did you mean --json/);
    assert.match(await unreadable(['convert', 'a', '--tunning', 'DADGAD']), /Did you mean --tuning/);
    assert.match(await unreadable(['notes', 'a', '-q']), /no option -q/);
  });

  it('refuses a value that is missing, one too many, or given twice', async () => {
    assert.match(await unreadable(['convert', 'a', '--tuning']), /--tuning T has no value/);
    assert.match(await unreadable(['convert', 'a', '--tuning', '--json']), /--tuning T has no value/);
    assert.match(await unreadable(['convert', 'a', '--tuning=']), /--tuning T has no value/);
    assert.match(await unreadable(['convert', 'a']), /--tuning T is missing/);
    assert.match(await unreadable(['transpose', 'a']), /--by N is missing/);
    assert.match(await unreadable(['move-capo', 'a']), /--to VALUE is missing/);
    assert.match(await unreadable(['check', '--json=yes', 'a']), /--json takes no value/);
    assert.match(await unreadable(['transpose', 'a', '--by', '1', '--by', '2']), /--by is given twice/);
    for (const command of ['check', 'notes'])
      assert.match(await unreadable([command]), /FILES?…? is missing/);
    assert.match(await unreadable(['convert', 'a', '--tuning', 'open', 'E']), /“E” is one too many.*quotes/);
  });

  const reading: [string, string[]][] = [
    ['check', []],
    ['notes', []],
    ['convert', ['--tuning', 'DADGAD']],
    ['transpose', ['--by', '2']],
    ['move-capo', ['--to', '2']],
  ];
  for (const [command, options] of reading)
    it(`refuses with ${command} what cannot be read`, async () => {
      const missing = `${FOLDER}/not-there.pegbox`;
      assert.match(await unreadable([command, missing, ...options]), /There is no file .*not-there\.pegbox/);
      assert.match(await unreadable([command, FOLDER, ...options]), /is a directory/);
      const file = fileWith('latin.pegbox', Buffer.from(`${FERRY}\nUn caf\xe9\n`, 'latin1'));
      assert.match(await unreadable([command, file, ...options]), /latin\.pegbox is not UTF-8: line 13 /);
      const wide = fileWith('wide.pegbox', Buffer.from(`\uFEFF${FERRY}`, 'utf16le'));
      assert.match(await unreadable([command, wide, ...options]), /is not UTF-8: line 1 /);
      assert.match(await unreadable([command, '-', ...options], Buffer.from([0x41, 0xff])), /Standard input/);
    });

  it('reads as little of its input as it likes: a pipe that breaks leaves no trace', async () => {
    const long = fileWith('long.pegbox', `${firstString('0-2-3-5-7-5-3-2-')}\n`.repeat(3000));
    const child = spawn(process.execPath, [PROGRAM, 'notes', long, '--json']);
    let err = '';
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
    let first = '';
    child.stdout.once('data', (chunk: Buffer) => {
      first = chunk.toString();
      child.stdout.destroy();
    });
    const code = await new Promise((resolve) => child.on('close', resolve));
    assert.match(first, /^\[/);
    assert.ok(!first.trimEnd().endsWith(']'), 'the whole answer fitted in one chunk, so no pipe broke');
    assert.equal(err, '');
    assert.equal(code, 0);
  });

  it('writes a long answer to its end', async () => {
    const long = fileWith('long.pegbox', `${firstString('0-2-3-5-7-5-3-2-')}\n`.repeat(3000));
    const { code, out } = await pegbox(['notes', long, '--json']);
    assert.equal(code, 0);
    assert.equal((JSON.parse(out) as unknown[]).length, 24_000);
  });

  it("refuses a file of the user's tunings that is not a list of names and values", async () => {
    const with_ = (text: string): string[] => ['tuning', 'E', '--tunings', fileWith('own.json', text)];
    assert.match(await unreadable(with_('{ "harbour": ')), /own\.json is not JSON/);
    assert.match(await unreadable(with_('["DADGAD"]')), /one object of names and values/);
    assert.match(await unreadable(with_('{ "harbour": 5 }')), /the value of “harbour” must be text/);
    assert.match(await unreadable(['tuning', 'E', '--tunings', `${FOLDER}/no.json`]), /There is no file/);
  });
});
