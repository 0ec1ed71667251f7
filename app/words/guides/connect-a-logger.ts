import type { Guide } from './guide'

export const connectALogger: Guide = {
  id: 'connect-a-logger',
  title: 'Connect a logger',
  gives: 'Readings that nobody types: a device sends them by itself, or its file is read in afterwards.',
  steps: [
    {
      says: 'Open the shoot, then [Set]; under [More] the laptop’s view leads to [Readings from a file or a device].',
    },
    { says: 'A file: press [Choose a CSV], or paste its lines.' },
    {
      says: 'Say which column is the time and which is the core or the cooker; the picture beneath shows what comes of it.',
      picture: {
        name: 'logger-file',
        alt: 'A logger’s file with three columns: each has its first values and a choice of what it is: the time, the core, the cooker.',
      },
    },
    { says: 'Press [Put 24 readings into the log], or however many there are; a file read twice is kept once.' },
    {
      says: 'A device: with --crew on, make it a key on [Crew links] under its name; it is shown once.',
      caution: 'Whoever has the key can put readings into this shoot. [Revoke] ends it at once.',
    },
    {
      says: 'Let the device send what the readings page shows, ready to copy; its clock need not be right.',
      picture: {
        name: 'logger-device',
        alt: 'The device that has sent, how many readings, and that its clock is right; beneath it the request to copy.',
      },
      caution: 'A probe in the meat, not in the fat and not at the bone. Lead the cable clear of the fire and of feet.',
    },
  ],
  wrong: [
    { sign: '401 or 403', todo: 'The key is missing, ended, or another shoot’s. Make a new one.' },
    { sign: '422', todo: 'Nothing was kept; the answer says why at each entry. Mend it, and send the same again.' },
    { sign: 'clock 2 min behind; corrected', todo: 'Nothing to do: every time was put right.' },
    { sign: 'The wrong file', todo: '[Take 24 back] stands beside what was read in. It can be put in again.' },
  ],
}
