import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { URI } from 'langium';
import { expect, test } from 'vitest';
import type { Finding } from '../../language/src/plan/finding.ts';
import { type Files, load, loadInTurn } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll, checkInTurn } from '../../language/src/rules/check.ts';

const texts = new Map<string, string>(
    readdirSync('examples', { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.spread'))
        .map((name) => [`/team/${name}`, readFileSync(join('examples', name), 'utf8')]),
);
const odd: Readonly<Record<string, string>> = {
    'shelf.spread':
        'lure bramble "Bramble" jet { length 200 mm }\nlure thorn "Thorn" jet { length 180 mm }\n',
    'user.spread': 'use "shelf.spread"\nlure heath "Heath" jet like bramble { length 220 mm }\n',
    'slip.spread': 'use "usr.spread"\nuse "shelf.spread"\nuse "gone.spread"\nboat heron { lenght 9 m }\n',
    'round.spread': 'use "about.spread"\nlure thorn "Thorn" jet { length 100 mm }\n',
    'about.spread': 'use "round.spread"\nuse "shelf.spread"\n',
    'self.spread': 'use "self.spread"\n',
    'torn.spread': 'use "torn-too.spread"\nspread early {\n    speed\n',
    'copy.spread': 'use "shelf.spread"\nlure bramble "Bramble" jet { length 90 mm }\n',
};
for (const [name, text] of Object.entries(odd)) texts.set(`/team/odd/${name}`, text);

const wanted = [...texts.keys()].map((path) => URI.file(path));
const asked: string[] = [];
const files: Files = ({ path }) => {
    asked.push(path);
    if (path.endsWith('torn-too.spread')) return { kind: 'unread', reason: 'is not UTF-8' };
    const text = texts.get(path);
    return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
};
const roots = [URI.file('/team')];
const told = ({ rule, severity, what, why, remedy, at, related, fixes }: Finding) =>
    JSON.stringify([
        rule,
        severity,
        what,
        why,
        remedy,
        [at, ...related.map((one) => one.at)].map(spot),
        fixes.length,
    ]);
const spot = ({ uri, start, end }: Finding['at']) => [uri, start, end];

test('files that are loaded in turn are found to be what they are when all are held at once', async () => {
    const options = { once: true };
    const together = checkAll(await load(createServices(), wanted, files, roots), options);
    const atOnce = new Map(together.map(({ uri, findings }) => [uri, findings.map(told)]));
    const inTurn = new Map<string, string[]>();
    const services = createServices();
    let most = 0;
    for await (const sheet of checkInTurn(loadInTurn(services, wanted, files, roots), options)) {
        inTurn.set(sheet.uri, sheet.findings.map(told));
        most = Math.max(most, services.shared.workspace.LangiumDocuments.all.count());
    }
    expect([...atOnce.values()].flat().length).toBeGreaterThan(10);
    expect(inTurn.size).toBe(texts.size);
    for (const [uri, findings] of atOnce) expect([uri, inTurn.get(uri)]).toEqual([uri, findings]);
    expect(most).toBeLessThan(texts.size);
});

test('a file that cannot be had is asked for once, however many use it', async () => {
    asked.length = 0;
    for await (const _ of loadInTurn(createServices(), wanted, files, roots));
    expect(asked.filter((path) => path.endsWith('torn-too.spread'))).toHaveLength(1);
    expect(asked.filter((path) => path.endsWith('gone.spread'))).toHaveLength(1);
});
