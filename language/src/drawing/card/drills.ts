import type { Spread, SpreadLine } from '../../plan/model.ts';
import { listed } from '../../plan/wording.ts';

/** What is done when the day takes a turn, from what the plan says of it and nothing else. */
export interface Drill {
    readonly title: string;
    readonly steps: readonly string[];
}

export function drillsOf(plan: Spread): Drill[] {
    const drills: Drill[] = [
        { title: 'At a strike', steps: atStrike(plan) },
        { title: 'Two fish at once', steps: twoFish(plan) },
        { title: 'A fish is up and does not eat', steps: raised(plan) },
    ];
    return drills.filter(({ steps }) => steps.length > 0);
}

function atStrike({ hold, roles, lines }: Spread): string[] {
    const clears = roles.flatMap(({ position, name }) =>
        position ? [`${name.value} to ${position.value.name}`] : [],
    );
    const waits = lines.some(({ wait }) => wait);
    return [
        ...(hold?.value ? ['Hold speed and course for a second bite.'] : []),
        ...(waits
            ? ['The wait stands beside each line’s hooked drag: nobody touches the lever before it is over.']
            : []),
        ...(clears.length > 0 ? [`Who sees to which line: ${clears.join(', ')}.`] : []),
    ];
}

/** Who takes the second rod is known only where the plan names anglers. */
function twoFish({ lines, hold }: Spread): string[] {
    const fished = lines.filter(({ role }) => role === 'fished');
    if (fished.length < 2) return [];
    const rods = byAngler(fished);
    const both = [...rods].filter(([, positions]) => positions.length > 1);
    const unnamed = rods.size > 0 ? fished.filter(({ angler }) => !angler) : [];
    return [
        ...(hold?.value
            ? ['The helm has held on for this: speed and course stay until the second fish is on.']
            : []),
        ...(rods.size > 0
            ? [
                  `Rods: ${[...rods].map(([name, positions]) => `${name} takes ${listed(positions, 'or')}`).join('; ')}.`,
              ]
            : []),
        ...both.map(
            ([name, positions]) =>
                `${name} cannot take ${positions.length === 2 ? 'both' : 'two of'} ${listed(positions)}: say before the lines go in who takes the second.`,
        ),
        ...(unnamed.length > 0 ? [`Nobody is named for ${listed(unnamed.map(nameOf))}.`] : []),
    ];
}

/** What stands ready, and which teasers are out to hold a fish. */
function raised({ lines, roles }: Spread): string[] {
    const keeper = (line: SpreadLine) =>
        line.angler?.value ??
        roles.find(({ position }) => position?.value.name === line.position.name)?.name.value;
    const named = (line: SpreadLine) => {
        const who = keeper(line);
        const gear = [line.outfit, line.bait ?? line.lure ?? line.teaser].map((each) => each?.value.title);
        return `${nameOf(line)}: ${[...gear, who].filter(Boolean).join(', ')}.`;
    };
    const ready = lines.filter(({ role }) => role === 'standby');
    const teasers = lines.filter(({ role }) => role === 'teaser');
    return [
        ...ready.map((line) => `Ready at ${named(line)}`),
        ...teasers.map((line) => `Teaser at ${named(line)}`),
    ];
}

function byAngler(lines: readonly SpreadLine[]): Map<string, string[]> {
    const rods = new Map<string, string[]>();
    for (const line of lines) {
        if (!line.angler) continue;
        rods.set(line.angler.value, [...(rods.get(line.angler.value) ?? []), nameOf(line)]);
    }
    return rods;
}

function nameOf({ position }: SpreadLine): string {
    return position.name;
}
