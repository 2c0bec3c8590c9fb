import { expect, test } from 'vitest';
import { allThatIsSaid, dice, sound, torn } from './torn.ts';

/** Words that a person would never write. */
const machine = /\bundefined\b|\bNaN\b|\bInfinity\b|\[object/;

const names = [...sound.keys()];

/** The example team's files with slips in one to three of them, and the one of them that is asked about. */
function tornTeam(seed: number): [asked: string, texts: ReadonlyMap<string, string>] {
    const roll = dice(seed);
    const any = () => names[Math.floor(roll() * names.length)]!;
    const asked = any();
    const texts = new Map(sound);
    for (let files = 1 + Math.floor(roll() * 3); files > 0; files--) {
        const name = roll() < 0.5 ? asked : any();
        texts.set(name, torn(texts.get(name)!, roll));
    }
    return [asked, texts];
}

test('whatever slips a hand makes, everything that is said of a plan is said without a fault', async () => {
    for (let seed = 1; seed <= 60; seed++) {
        const [asked, texts] = tornTeam(seed);
        const said = await allThatIsSaid(asked, texts).catch((fault: Error) => {
            throw new Error(`seed ${seed}, ${asked}: ${fault.stack}`);
        });
        const found = machine.exec(said);
        const around = found ? said.slice(Math.max(0, found.index - 80), found.index + 80) : '';
        expect(around, `seed ${seed}, ${asked}`).toBe('');
    }
}, 240_000);

test('a brace in the place of a speed leaves a bait whose hooks can still be told of', async () => {
    const baits = sound.get('baits.spread')!.replaceAll('runs 4 kn to', 'runs } kn to');
    const said = await allThatIsSaid(
        'plans/sailfish-on-bait.spread',
        new Map([...sound, ['baits.spread', baits]]),
    );
    expect(said).toContain('do not say their kind');
});

test('a limit without its words is no limit that can be said twice', async () => {
    const text = 'rules a {\n    lines per 08:00\n    lines per 09:00\n    at most 3\n    at most 4\n}\n';
    const said = await allThatIsSaid('a.spread', new Map([['a.spread', text]]));
    expect(said).not.toMatch(machine);
    expect(said).not.toContain('said twice');
});
