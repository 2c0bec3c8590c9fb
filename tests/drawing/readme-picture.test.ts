import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { URI } from 'langium';
import { expect, test } from 'vitest';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { svgOf } from '../../language/src/drawing/svg.ts';
import { load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';

const examples = resolve(import.meta.dirname, '../../examples');

test('the picture in the README is what the example draws today', async () => {
    const loaded = await load(
        createServices(),
        [URI.file(`${examples}/plans/blue-marlin.spread`)],
        (uri) => ({
            kind: 'text',
            text: readFileSync(uri.fsPath, 'utf8'),
        }),
    );
    const [sheet] = checkAll(loaded);
    const plan = sheet!.plans.find((each) => each.plan.name === 'bank-settled')!;
    const drawn = svgOf(sceneFromAbove(plan, sheet!.judgement.plans.get('bank-settled')));
    await expect(drawn).toMatchFileSnapshot(`${examples}/settled-day.svg`);
});
