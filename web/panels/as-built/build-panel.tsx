import { useMemo } from 'react';
import { gridlineWords } from '../../../routing/site/place/gridline-words.ts';
import type { Point2, Point3, Site } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { useDocument } from '../../document/use-document.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { ChargerMargins } from '../elements/drops/charger-margins.tsx';
import { ChargerCircuit } from '../elements/drops/charger-panel.tsx';
import { Fact, Facts, Link, OwnFindings } from '../facts/facts.tsx';
import { AsBuiltFields } from './as-built-fields.tsx';

/** What is selected, for the person who builds it: where it stands, what was found there, and nothing that changes the drawing. */
export function BuildPanel({ list, id }: Pick<Ref, 'list' | 'id'>) {
  const site = useDocument((state) => state.site);
  if (list === 'drops') return <DropToBuild id={id} />;
  const charger = list === 'chargers' ? site.chargers.find((each) => each.id === id) : undefined;
  if (charger) return <DropToBuild id={charger.drop} />;
  const places = placesOf(site, list, id);
  return (
    <>
      <Facts>
        {places.map(({ name, at }) => (
          <Fact key={name} name={name}>
            {gridlineWords(at, site.gridlines, site.units)}
          </Fact>
        ))}
        <Served list={list} id={id} />
      </Facts>
      <OwnFindings id={id} />
    </>
  );
}

/** The drops of a stall, as the way to them. */
function Served({ list, id }: Pick<Ref, 'list' | 'id'>) {
  const chargers = useDocument((state) => state.site.chargers);
  if (list !== 'stalls') return null;
  const drops = [...new Set(chargers.filter(({ stalls }) => stalls.includes(id)).map(({ drop }) => drop))];
  return (
    <Fact name="served by">{drops.length === 0 ? 'none' : drops.map((drop) => <Link key={drop} id={drop} />)}</Fact>
  );
}

interface Named {
  readonly name: string;
  readonly at: Point3;
}

function placesOf(site: Site, list: Ref['list'], id: string): readonly Named[] {
  const all: readonly { readonly id: string }[] = site[list];
  const element = all.find((each) => each.id === id) as Site[Ref['list']][number] | undefined;
  if (!element) return [];
  const inSpace = (at: readonly number[]): Point3 => [at[0]!, at[1]!, at[2] ?? 0];
  if ('entry' in element)
    return [
      { name: 'center', at: inSpace(element.at) },
      { name: 'entry', at: element.entry },
    ];
  if ('at' in element) return [{ name: 'at', at: inSpace(element.at) }];
  if ('path' in element)
    return element.path.map((at, i) => ({
      name: i === 0 ? 'from' : i === element.path.length - 1 ? 'to' : `by ${i}`,
      at: inSpace(at),
    }));
  if ('outline' in element) return element.outline.map((at, i) => ({ name: `corner ${i + 1}`, at: inSpace(at) }));
  if ('from' in element && typeof element.from !== 'string')
    return [
      { name: 'from', at: inSpace(element.from) },
      { name: 'to', at: inSpace((element as { readonly to: Point2 | Point3 }).to) },
    ];
  return [];
}

function DropToBuild({ id }: { readonly id: string }) {
  const drop = useDocument((state) => state.site.drops.find((each) => each.id === id));
  const chargers = useDocument((state) => state.site.chargers);
  const own = useMemo(() => chargers.filter((charger) => charger.drop === id), [chargers, id]);
  const gridlines = useDocument((state) => state.site.gridlines);
  const units = useDocument((state) => state.site.units);
  if (!drop) return null;
  return (
    <>
      <Facts>
        <Fact name="box drawn">{gridlineWords(drop.box, gridlines, units)}</Fact>
        {drop.retractor && <Fact name="retractor drawn">{gridlineWords(drop.retractor, gridlines, units)}</Fact>}
        <Fact name="cord">{nearestInch(drop.cord, units)}</Fact>
      </Facts>
      <AsBuiltFields drop={drop} />
      {own.map((charger) => (
        <section key={charger.id} aria-label={`Charger ${charger.id} as drawn`}>
          <h3>{charger.id} as drawn</h3>
          <ChargerMargins charger={charger.id} />
          <ChargerCircuit charger={charger.id} />
        </section>
      ))}
      <OwnFindings id={id} />
    </>
  );
}
