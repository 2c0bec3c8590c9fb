import { URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { cardContents } from '../../language/src/drawing/card/contents.ts';
import { fingerprintOf } from '../../language/src/drawing/card/fingerprint.ts';
import { compare } from '../../language/src/plan/compare/compare.ts';
import { messageOf } from '../../language/src/plan/finding.ts';
import { type FileText, load } from '../../language/src/plan/load.ts';
import { packageOf, placesOfPackage, readPackagePath } from '../../language/src/plan/names/packages.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';

const version = '1.4.0';
const preset = `use "gear.spread"
spread four-lines "Four lines" {
    edition "7"
    speed 8 kn
    shotgun { lure lamp  back 60 m }
}
`;
const gear = 'lure lamp "Lamp" jet { length 240 mm }\n';
const installed = {
    '/team/node_modules/reef-pack/four.spread': preset,
    '/team/node_modules/reef-pack/gear.spread': gear,
};

/** Checks the first of some files; all that are of a package have its version. */
async function check(files: Readonly<Record<string, string | FileText>>, scheme = 'file') {
    const root = (path: string) => URI.from({ scheme, path });
    const loaded = await load(
        createServices(),
        [root(Object.keys(files)[0]!)],
        (uri) => {
            const found = files[uri.path];
            if (typeof found === 'object') return found;
            if (found === undefined) return { kind: 'missing' };
            return { kind: 'text', text: found, ...(packageOf(uri) && { version }) };
        },
        [root('/team')],
    );
    const [sheet] = checkAll(loaded);
    const said = sheet!.findings
        .filter(({ rule }) => rule === 'use' || rule === 'unknown-name')
        .map(messageOf);
    return { plans: sheet!.plans, spreads: sheet!.resolved.spreads, said };
}

const user = (file = 'reef-pack/four.spread') =>
    `use "package:${file}"\nspread day "Our day" like four-lines { sea 0.5 m }\n`;

describe('a file of a package', () => {
    test('is found in a `node_modules` above the file that uses it, with what it uses itself', async () => {
        const { spreads, said } = await check({ '/team/plans/a/day.spread': user(), ...installed });
        expect(said).toEqual([]);
        expect(spreads[0]?.lines[0]?.lure?.value.length?.si).toBeCloseTo(0.24);
    });

    test('is the nearest one where several folders have it', async () => {
        const { spreads } = await check({
            '/team/plans/day.spread': user(),
            ...installed,
            '/team/plans/node_modules/reef-pack/four.spread': 'spread four-lines { speed 6 kn }\n',
        });
        expect(spreads[0]?.speed?.quantity?.text).toBe('6 kn');
    });

    test('is looked for no higher than the team’s folder', async () => {
        const { said } = await check({
            '/team/plans/day.spread': user(),
            '/node_modules/reef-pack/four.spread': preset,
        });
        expect(said[0]).toBe(
            'The package `reef-pack` is not installed in this folder. Packages are read from the team’s own `node_modules`, and never fetched. Install it here, or take this line out.',
        );
    });

    test('may be of a package that another one brought along, or of a scope', async () => {
        const { said } = await check({
            '/team/day.spread': user('@coast/presets/a/four.spread'),
            '/team/node_modules/@coast/presets/a/four.spread':
                'use "package:reef-pack/gear.spread"\nspread four-lines { shotgun { lure lamp  back 50 m } }\n',
            '/team/node_modules/@coast/presets/node_modules/reef-pack/gear.spread': gear,
        });
        expect(said).toEqual([]);
    });

    test.each([
        ['leaves its package', 'package:reef-pack/../other/a.spread', 'lies outside the folder `reef-pack`'],
        [
            'leaves it by the other slash',
            'package:reef-pack\\\\..\\\\..\\\\a.spread',
            'lies outside the folder',
        ],
        ['names no file', 'package:reef-pack', 'does not name a package and a file of it'],
        ['names no package', 'package:', 'does not name a package and a file of it'],
        ['climbs by its name', 'package:../reef-pack/a.spread', 'does not name a package and a file of it'],
    ])('is refused where the path %s', async (_what, path, part) => {
        const { said } = await check({ '/team/day.spread': `use "${path}"\n`, '/team/a.spread': '' });
        expect(said).toEqual([expect.stringContaining(part)]);
    });

    test('uses nothing that merely lies beside its package', async () => {
        const { said } = await check({
            '/team/node_modules/reef-pack/four.spread': 'use "../../gear.spread"\n',
            '/team/gear.spread': gear,
        });
        expect(said).toEqual([expect.stringContaining('lies outside the folder `reef-pack`')]);
    });

    test('is missed in a folder that is on no disk, with what to do', async () => {
        const { said } = await check({ '/team/day.spread': user() }, 'vscode-vfs');
        expect(said[0]).toContain('these files are on no disk that packages are installed on');
        expect(said[0]).toContain('Open the folder from a disk');
    });

    test('that could not be read says why', async () => {
        const { said } = await check({
            '/team/day.spread': user(),
            '/team/node_modules/reef-pack/four.spread': { kind: 'unread', reason: 'is not UTF-8' },
        });
        expect(said[0]).toBe('`package:reef-pack/four.spread` is not UTF-8. Nothing in it is known here.');
    });
});

describe('versions', () => {
    const built = async (files: Readonly<Record<string, string>>) =>
        (await check({ '/team/day.spread': user(), ...files })).plans[0]!;

    test('of presets stand on the card', async () => {
        const { facts } = cardContents(await built(installed));
        expect(facts).toContainEqual({
            caption: 'Built on',
            value: 'Four lines (edition 7, reef-pack 1.4.0)',
        });
    });

    test('of packages that only lend gear stand there too', async () => {
        const plan = `use "package:reef-pack/gear.spread"\nspread day { shotgun { lure lamp  back 60 m } }\n`;
        const { plans } = await check({ '/team/day.spread': plan, ...installed });
        expect(cardContents(plans[0]!).facts).toContainEqual({
            caption: 'Built on',
            value: 'reef-pack 1.4.0',
        });
    });

    test('change no fingerprint, and the package’s is told by a comparison', async () => {
        const { plan } = await built(installed);
        const newer = { ...plan, packages: ['reef-pack 1.5.0'] };
        expect(fingerprintOf(newer)).toBe(fingerprintOf(plan));
        expect(compare(plan, newer)).toEqual([
            { kind: 'plan', path: ['packages'], before: 'reef-pack 1.4.0' },
            { kind: 'plan', path: ['packages'], after: 'reef-pack 1.5.0' },
        ]);
    });

    test('are left out where there are none', async () => {
        const { plans } = await check({ '/team/day.spread': 'spread day { }\n' });
        expect(cardContents(plans[0]!).facts.map(({ caption }) => caption)).not.toContain('Built on');
    });
});

test('the places of a package are what the resolver of a package manager walks', () => {
    const path = readPackagePath('package:@coast/presets/a/b.spread')!;
    const at = (uri: string, top?: string) =>
        placesOfPackage(URI.file(uri), path, top === undefined ? undefined : URI.file(top)).map(
            (each) => each.path,
        );
    expect(at('/team/plans/day.spread', '/team')).toEqual([
        '/team/plans/node_modules/@coast/presets/a/b.spread',
        '/team/node_modules/@coast/presets/a/b.spread',
    ]);
    // A folder of packages has none of its own.
    expect(at('/team/node_modules/other/x.spread', '/team')).toEqual([
        '/team/node_modules/other/node_modules/@coast/presets/a/b.spread',
        '/team/node_modules/@coast/presets/a/b.spread',
    ]);
    expect(at('/team/day.spread')).toEqual(['/team/node_modules/@coast/presets/a/b.spread']);
});
