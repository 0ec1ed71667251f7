import type { Guide } from './guide'

export const runADay: Guide = {
  id: 'run-a-day',
  title: 'Run a day',
  gives: 'Everybody knows from their own phone what is next, when, and what they do; the day is logged as it happens.',
  steps: [
    {
      says: 'Start it so that phones may come in, then give everybody their code from [Crew links].',
      type: ['npm start -- --crew'],
    },
    {
      says: 'On each phone open [Set] and choose who you are; the phone remembers it.',
      picture: {
        name: 'run-board',
        alt: 'The board on a phone: what this person does next, a count in large digits, when it is expected, and six large buttons.',
      },
    },
    { says: 'Under [More] try the [Sound check] on every phone before the fire is lit.' },
    {
      says: 'Press [Mark] when a moment has come: fire lit, meat on, probe in, and so on.',
      caution:
        'Charcoal outdoors only: it gives off carbon monoxide, also when it no longer flames. Somebody stays in sight of the fire.',
    },
    {
      says: 'Press [Reading] every quarter of an hour and type what the probe shows; the cook is forecast anew.',
      picture: {
        name: 'run-reading',
        alt: 'Typing a reading: which probe, the value in large digits, what the last one was and what is expected now, above a keypad.',
      },
      caution: 'It forecasts, a thermometer decides. Clean the probe before it goes from raw meat into cooked.',
    },
    {
      says: 'When the count says standby, go there and answer: [Coming], then [Ready].',
      caution: 'Open the lid of a choked fire a finger wide first, and stand back: air let in at once can flare.',
    },
    { says: 'Late? Press [Late]. Calls that move are shown to those whom they concern.' },
    {
      says: 'On a laptop [More] leads to the laptop’s view: everything at once, and a new plan for the rest of the day.',
      picture: {
        name: 'run-laptop',
        alt: 'The laptop’s view during a day: the measured curve and its forecast, then all calls with their states, the probes, the food and the log.',
      },
    },
  ],
  wrong: [
    {
      sign: 'No signal',
      todo: 'Go on. The phone keeps what you enter, forecasts by itself, and hands all of it over when it is back.',
    },
    { sign: 'Every screen is dead', todo: 'The call sheet names a probe reading for each call. Call at that.' },
    { sign: 'A wrong entry', todo: 'Open [Log] and correct it there. Nothing is lost by it.' },
    {
      sign: 'The phone sleeps or stays silent',
      todo: 'On a trusted line it keeps the screen lit and rings: the board offers [Make this phone trust the set].',
    },
  ],
}
