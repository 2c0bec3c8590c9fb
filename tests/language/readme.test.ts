import { existsSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { messageOf } from '../../language/src/plan/finding.ts';
import { load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';

const root = resolve(import.meta.dirname, '../..');
const read = (name: string) => readFileSync(resolve(root, name), 'utf8');

describe('the README', () => {
    const readme = read('README.md');

    test('shows a plan that checks clean with the example team’s files', async () => {
        const [, plan] = /```spread\n([\s\S]*?)```/.exec(readme)!;
        const uses = ['boats', 'tackle', 'lures'].map((name) => `use "../${name}.spread"\n`).join('');
        const uri = URI.file(`${root}/examples/plans/shown-in-the-readme.spread`);
        const loaded = await load(createServices(), [uri], (asked) => ({
            kind: 'text',
            text:
                asked.toString() === uri.toString()
                    ? `use "layback:species"\n${uses}${plan}`
                    : readFileSync(asked.fsPath, 'utf8'),
        }));
        expect(checkAll(loaded)[0]!.findings.map(messageOf)).toEqual([]);
    });

    test('names scripts that there are', () => {
        const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
        const named = [...readme.matchAll(/npm run ([\w:-]+)/g)].map(([, name]) => name!);
        expect(named.length).toBeGreaterThan(1);
        expect(named.filter((name) => !(name in scripts))).toEqual([]);
    });
});

test.each(['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'examples/README.md', 'language/REFERENCE.md'])(
    'the links of %s lead somewhere',
    (name) => {
        const targets = [...read(name).matchAll(/\]\((?!https?:|#)([^)#\s]+)/g)].map(([, target]) => target!);
        const missing = targets.filter((target) => !existsSync(resolve(root, dirname(name), target)));
        expect(missing).toEqual([]);
    },
);
