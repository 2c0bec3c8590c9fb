import type { Spread } from '../../plan/model.ts';
import { capital, listed } from '../../plan/wording.ts';
import { print } from '../../units/print.ts';
import { units } from '../../units/unit.ts';

/** Who does what: `Helm`, `Ines`. */
export interface NamedRole {
    readonly role: string;
    readonly name: string;
}

export interface FallbackOnCard {
    readonly when: string;
    /** What the team does then, a sentence each. */
    readonly steps: readonly string[];
}

/** Roles as the plan gives them, then who takes which rod. */
export function rolesOf({ roles, lines }: Spread): NamedRole[] {
    const rods = new Map<string, string[]>();
    for (const { angler, position } of lines) {
        if (angler) rods.set(angler.value, [...(rods.get(angler.value) ?? []), position.name]);
    }
    return [
        ...roles.map(({ role, name }) => ({ role: capital(role), name: name.value })),
        ...[...rods].map(([name, positions]) => ({ role: `Takes ${listed(positions)}`, name })),
    ];
}

/** One that has nothing left to do is none. */
export function fallbacksOf({ fallbacks }: Spread): FallbackOnCard[] {
    return fallbacks
        .map(({ when, drop, say }) => ({
            when: when.value,
            steps: [
                ...(drop.length > 0 ? [`Leave out ${listed(drop.map(({ value }) => value.name))}.`] : []),
                ...(say ? [closed(say.value)] : []),
            ],
        }))
        .filter(({ steps }) => steps.length > 0);
}

/** What the plan keeps ready, then how many more of a lure that is fished are on board. */
export function sparesOf({ spares, lines }: Spread): string[] {
    const fished = new Map(
        lines.flatMap(({ lure }) => (lure ? [[lure.value.title, lure.value.spares]] : [])),
    );
    return [
        ...spares.map(({ of }) => of.value.title),
        ...[...fished].flatMap(([title, more]) =>
            more ? [`${title}: ${print(more.si, units.count)} more on board`] : [],
        ),
    ];
}

/** Ends as a sentence does. */
export function closed(words: string): string {
    return /[.!?…]$/.test(words) ? words : `${words}.`;
}
