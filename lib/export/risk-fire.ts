import type { Stage } from '../model/cook'
import type { Shoot } from '../plan/shoot'
import { celsius, formatTemp } from '../units'
import { hearthOf, heatedBy, isPluggedIn, searsHot } from './hearth'
import type { RiskInput, RiskLine, WhoOf } from './risk-sheet'

/** Sparks carry on such a wind; [estimate] m/s */
const SPARKS_FLY_MPS = 6

/** What the heat itself brings: by fuel, by how hot it gets, by wind. */
export function fireRisks({ shoot, units }: RiskInput, who: WhoOf): RiskLine[] {
  const cook = who('cook', 'presenter')
  return [
    ...burningFuel(shoot, cook),
    ...gas(shoot, cook),
    ...plugged(shoot),
    ...wind(shoot, cook),
    {
      hazard: 'Burns',
      does: `Burns kit and running water known to everybody before the heat is on. Heat gloves and long tongs for whoever touches the cooker, which reaches ${formatTemp(celsius(hottestC(shoot)), units)}. No loose sleeves, no bare feet.`,
      who: cook,
    },
    ...hotFat(shoot, cook),
  ]
}

const hottestC = (shoot: Shoot) =>
  Math.max(...shoot.cooks.flatMap(({ stages }) => stages.map((stage: Stage) => ('at' in stage ? (stage.at ?? 0) : 0))))

function burningFuel(shoot: Shoot, cook: string): RiskLine[] {
  if (!heatedBy(shoot, 'charcoal', 'wood')) return []
  const charcoal = heatedBy(shoot, 'charcoal')
  const roofed = shoot.cooks.some(({ cooker }) => cooker.sheltered)
  return [
    {
      hazard: 'Open fire',
      does: 'Today’s fire restrictions asked for and written above; where fires are not allowed nothing is lit. Dry grass and leaves cleared around the cooker. Extinguisher, fire blanket and two buckets of water within reach, and somebody who knows how to use them.',
      who: cook,
    },
    {
      hazard: 'Fire left alone',
      does: 'Somebody named stays in sight of it from the match until it is out or handed over.',
      who: cook,
    },
    {
      hazard: 'Carbon monoxide',
      does: `${charcoal ? 'Charcoal' : 'Wood'} burns outdoors only, never in a room, tent, garage or van, nor does it cool down in one: it gives off carbon monoxide long after the flames.${roofed ? ' The plan shelters the cooker from the wind: two sides and the way up for the smoke stay open.' : ''} Headache or dizziness: out into fresh air, call for help.`,
      who: cook,
    },
    {
      hazard: 'Choked fire',
      does: 'A shut lid is opened a finger wide first, standing to the side: air let in at once can flare into a face or a lens.',
      who: cook,
    },
    {
      hazard: 'Ash',
      does: 'Left in the cooker until cold, or taken away in a metal bin with a lid that stands on stone: it keeps its heat for a day and more.',
      who: cook,
    },
  ]
}

const gas = (shoot: Shoot, cook: string): RiskLine[] =>
  heatedBy(shoot, 'gas')
    ? [
        {
          hazard: 'Gas',
          does: 'Hose and joints tried with soap water. Lid open when it is lit. Bottle upright, in shade, shut off when nobody cooks; used outdoors only.',
          who: cook,
        },
      ]
    : []

const plugged = (shoot: Shoot): RiskLine[] =>
  isPluggedIn(shoot)
    ? [
        {
          hazard: 'Electricity',
          does: `Cooker on its own socket${shoot.cooks.some(({ cooker }) => cooker.kind === 'water-bath') ? ', away from splashes of its bath' : ''}; lamps and chargers on another. Plugs and joints off wet ground, behind a protective switch.`,
          who: '',
        },
      ]
    : []

const wind = (shoot: Shoot, cook: string): RiskLine[] => {
  const blows = shoot.weather?.wind ?? 0
  const open = shoot.cooks.some(({ cooker }) => hearthOf(cooker.kind).heat !== 'electric' && !cooker.sheltered)
  return open && blows >= SPARKS_FLY_MPS
    ? [
        {
          hazard: 'Wind and sparks',
          does: `The plan counts on ${Math.round(blows)} m/s: cooker out of the wind, nothing that burns down-wind of it, crew and cameras up-wind. If it freshens the fire is choked.`,
          who: cook,
        },
      ]
    : []
}

const hotFat = (shoot: Shoot, cook: string): RiskLine[] =>
  searsHot(shoot)
    ? [
        {
          hazard: 'Hot fat at the sear',
          does: 'Flames are smothered with the lid, never with water. Lens and operator an arm’s length back; one person calls "back".',
          who: cook,
        },
      ]
    : []
