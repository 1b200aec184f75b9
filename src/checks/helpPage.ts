import { CHECKS } from './checks';
import type { HelpGroup } from './check';

const INTRODUCTION = `# What Pegbox tells you

Every message has a code, and every code its paragraph here, with an example that brings the message about. An error cannot be resolved, a warning was surely not meant, an information is good to know, a hint could be written better. Under a message the light bulb offers its mends; each is one step to undo.

In the settings \`pegbox.severities\` makes a message graver or milder, or switches it off: \`"chord-omits": "off"\`.

Some messages speak of raising strings or of wide stretches. Strings under tension can break, and hands can be hurt: go by the string maker's figures, ask a luthier, and stop when something hurts.
`;

/** The help page, written from the checks themselves; `media/help.md` is a copy that ships with the extension. */
export function helpPage(): string {
  const groups: HelpGroup[] = [...new Set(CHECKS.map(({ help }) => help.group))];
  const parts = groups.map((group) => {
    const checks = CHECKS.filter(({ help }) => help.group === group);
    return [`## ${group}`, ...checks.map(paragraph)].join('\n\n');
  });
  return `${[INTRODUCTION.trimEnd(), ...parts].join('\n\n')}\n`;
}

function paragraph({ code, severity, title, help, examples }: (typeof CHECKS)[number]): string {
  const example = (examples.raises[0] ?? '').trimEnd();
  return [
    `### ${code}`,
    `**${title}** (${severity}). ${help.meaning}`,
    help.mending,
    `\`\`\`pegbox\n${example}\n\`\`\``,
  ].join('\n\n');
}
