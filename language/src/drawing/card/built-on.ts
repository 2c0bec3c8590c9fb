import type { Spread } from '../../plan/model.ts';
import type { Cell } from '../title.ts';

/** The versions of what a plan is like, then those of packages that it takes gear or rules from. */
export function builtOn({ presets = [], packages = [] }: Spread): Cell[] {
    const said = presets.map(({ title, edition, package: from }) => {
        const version = [edition && `edition ${edition}`, from].filter(Boolean).join(', ');
        return `${title} (${version})`;
    });
    const others = packages.filter((each) => !presets.some(({ package: from }) => from === each));
    const all = [...said, ...others];
    return all.length > 0 ? [{ caption: 'Built on', value: all.join('; ') }] : [];
}
