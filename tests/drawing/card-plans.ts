import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { URI } from 'langium';
import { type CardContents, cardContents } from '../../language/src/drawing/card/contents.ts';
import { type Scene, sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { withTurns } from '../../language/src/plan/analyse/turns.ts';
import type { AnalysedPlan } from '../../language/src/plan/figures.ts';
import { load, loadText } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';

/** A plan with the card that is made of it. */
export interface Carded {
    readonly analysed: AnalysedPlan;
    readonly card: CardContents;
    readonly scene: Scene;
}

const plans = resolve(import.meta.dirname, '../../examples/plans');

/** Every spread of the example team, in the order of files and in them. */
export async function examples(): Promise<Carded[]> {
    const uris = readdirSync(plans)
        .filter((name) => name.endsWith('.spread'))
        .sort()
        .map((name) => URI.file(`${plans}/${name}`));
    const loaded = await load(createServices(), uris, (uri) =>
        existsSync(uri.fsPath)
            ? { kind: 'text', text: readFileSync(uri.fsPath, 'utf8') }
            : { kind: 'missing' },
    );
    return carded(loaded).filter(({ analysed }) => analysed.plan.origin.place.uri.includes('/plans/'));
}

export async function exampleOf(name: string): Promise<Carded> {
    return (await examples()).find(({ card }) => card.plan === name)!;
}

export async function cardedText(text: string): Promise<Carded> {
    return carded(await loadText(createServices(), text))[0]!;
}

function carded(loaded: Awaited<ReturnType<typeof loadText>>): Carded[] {
    return checkAll(loaded).flatMap(({ plans, judgement }) =>
        plans.map((plan) => {
            const findings = judgement.plans.get(plan.plan.name) ?? [];
            const analysed = plan.turns ? plan : withTurns(plan);
            return {
                analysed,
                card: cardContents(analysed, findings),
                scene: sceneFromAbove(plan, findings),
            };
        }),
    );
}

/** A plan that says no more than it must. */
export const sparse = `
spread bare "Bare" {
    port short corner { back 12 m }
}
`;

const ugly = [
    '<script>alert(1)</script>',
    'شاهین 5',
    'דג גדול',
    '🎣🐟🎣',
    'a&amp;b ]]> --> &#x3C;b>',
    `${'Longestname'.repeat(900)}`,
    'zero​width‮reversed\u0007bell',
] as const;

/** Names that would be markup, run off the paper, turn the writing, ring a bell. */
export const hostile = `
boat tern "${ugly[0]}" {
    length 10.8 m
    beam 3.6 m
    outriggers {
        length 6.4 m
        foot { ahead 3.1 m  out 1.7 m  up 2.3 m }
        rise 45 deg
        sweep 70 deg
        halyards 3.4 m, 6.0 m
    }
    flat clip { ahead 0.1 m  out 1.4 m  up 1.1 m }
}
lure one "${ugly[0]}" pusher { length 330 mm }
lure two "${ugly[1]}" slant { length 240 mm }
lure three "${ugly[5]}" jet { length 240 mm }
lure four "${ugly[3]}" jet { length 220 mm }
spread storm "${ugly[0]} ${ugly[2]} ${ugly[3]} ${ugly[5]}" {
    boat tern
    speed 8 kn
    author "${ugly[2]} ${ugly[0]}"
    date 2026-03-07
    weather "${ugly[5]}"
    port short corner { lure one  back wave 2  from flat clip  angler "${ugly[5]}" }
    starboard long corner { lure two  back wave 3  from flat clip  angler "${ugly[4]}" }
    port long rigger { lure three  back wave 5  angler "${ugly[1]}" }
    starboard short rigger { lure four  back wave 4  angler "${ugly[6]}" }
    roles { helm "${ugly[0]}" }
    note "${ugly[0]} ${ugly[1]} ${ugly[6]}"
    note "${'words and more words '.repeat(600)}"
    step "${ugly[5]}"
}
`;
