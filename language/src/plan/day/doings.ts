import { type Change, compare } from '../compare/compare.ts';
import type { Difference } from '../compare/differences.ts';
import type { Spread } from '../model.ts';

/** What a plan says about itself and somebody has to do something about. */
const forAll: ReadonlySet<string> = new Set([
    'speed',
    'speeds',
    'heading',
    'turn',
    'hold',
    'method',
    'roles',
]);

/** What cannot be changed on a line that is out. */
const rigged: ReadonlySet<string> = new Set(['gear', 'outfit', 'leader', 'hooks']);

/** What is done to a line that stays out. */
const handled: ReadonlySet<string> = new Set([
    'back',
    'from',
    'clip',
    'loop',
    'wraps',
    'wait',
    'drag',
    'angler',
    'method',
]);

/** What becomes of one position. */
export interface Doing {
    in?: 'out' | 'moves' | 'changes';
    to?: string;
    set?: true;
    from?: string;
    differences: Difference[];
}

/** What there is to do from one spread to another, as they are written: for all, and by position. */
export function doingsOf(
    before: Spread,
    after: Spread,
): { readonly all: readonly Difference[]; readonly lines: ReadonlyMap<string, Doing> } {
    const lines = new Map<string, Doing>();
    const doing = (position: string): Doing => {
        const known = lines.get(position) ?? { differences: [] };
        lines.set(position, known);
        return known;
    };
    const all: Difference[] = [];
    for (const change of compare(before, after)) note(change, all, doing);
    return { all: withRolesOnce(all), lines };
}

function note(change: Change, all: Difference[], doing: (position: string) => Doing): void {
    switch (change.kind) {
        case 'plan':
            if (forAll.has(change.path[0] ?? '')) all.push(change);
            return;
        case 'position':
            if (change.before !== undefined) doing(change.position).in = 'out';
            else doing(change.position).set = true;
            return;
        case 'moved': {
            const gone = doing(change.before);
            gone.in = 'moves';
            gone.to = change.after;
            const come = doing(change.after);
            come.set = true;
            come.from = change.before;
            return;
        }
        case 'swap':
            for (const [index, position] of change.positions.entries()) {
                if (change.what === 'back')
                    doing(position).differences.push({
                        path: ['back'],
                        before: change.before[index]!,
                        after: change.after[index]!,
                    });
                else rig(doing(position));
            }
            return;
        case 'line': {
            const [word = ''] = change.path;
            const one = doing(change.position);
            // Gear that stands by is in: to fish it is to set it.
            if (word === 'role') {
                if (change.before === 'standby') one.set = true;
                else one.in = 'out';
            } else if (rigged.has(word)) rig(one);
            else if (handled.has(word)) one.differences.push(change);
            return;
        }
    }
}

function rig(doing: Doing): void {
    doing.in ??= 'changes';
    doing.set = true;
}

/** Who does what is read out in one go. */
function withRolesOnce(all: readonly Difference[]): Difference[] {
    const roles = all.filter(({ path }) => path[0] === 'roles');
    if (roles.length < 2) return [...all];
    const told = (side: 'before' | 'after') => roles.flatMap((each) => each[side] ?? []).join('; ');
    const [before, after] = [told('before'), told('after')];
    const once: Difference = { path: ['roles'], ...(before && { before }), ...(after && { after }) };
    return [...all.filter(({ path }) => path[0] !== 'roles'), once];
}
