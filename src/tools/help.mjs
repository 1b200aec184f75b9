// Writes media/help.md from the checks: node src/tools/help.mjs
import { writeFileSync } from 'node:fs';
import { tsImport } from 'tsx/esm/api';

const { helpPage } = await tsImport('../checks/helpPage.ts', import.meta.url);
writeFileSync(new URL('../../media/help.md', import.meta.url), helpPage());
