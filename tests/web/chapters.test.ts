import { readFileSync } from 'node:fs'
import { unzipSync } from 'fflate'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { FILE_DEVICE } from '../../lib/log/entry-words'
import { CLOCKS, clip, FILMED } from '../unit/export/filmed-day'
import { cuesOf } from '../unit/export/strict-webvtt'
import { axeViolations } from './axe'
import { openBrowser } from './browser'
import { type RunningApp, startApp } from './server'

/** What the editor takes away: the clips are told on the page, and the files of the day stand in them. */
let app: RunningApp
let browser: Browser
let page: Page
let edit: string
beforeAll(async () => {
  app = await startApp()
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 390, height: 844 } })
  const document = JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8'))
  const made = await page.request.post(`${app.address}/api/shoots`, { data: { writeId: 'chapters-test-1', document } })
  const { id } = await made.json()
  // Of a file the times are taken as they stand, however long a busy machine takes to answer.
  const entries = [...FILMED, ...CLOCKS].map((one) => ({ ...one.document, by: { device: FILE_DEVICE } }))
  const logged = await page.request.post(`${app.address}/api/shoots/${id}/log`, {
    data: { sent: new Date().toISOString(), entries },
  })
  expect(logged.ok(), await logged.text()).toBe(true)
  edit = `${app.address}/shoots/${id}/edit`
}, 400_000)
afterAll(async () => {
  await browser?.close()
  await app?.stop()
})

const field = (label: string) => page.getByLabel(label, { exact: true })
const saved = () => page.getByText('Saved.', { exact: true }).waitFor({ timeout: 30_000 })
const file = async (name: string) => (await page.request.get(`${edit}/${name}`)).text()

describe.sequential('for the edit', () => {
  it('a clip is told on the page; a timecode that does not exist is refused under its field', async () => {
    await page.goto(edit)
    await page.getByText('Camera B runs 12 s ahead').waitFor()
    await page.getByRole('button', { name: 'Add a clip' }).click()
    await field('Frames').selectOption('29.97 drop')
    await field('First frame').fill('14:41:00;01')
    await expect
      .poll(() => page.locator('.field.wrong .says').allTextContents(), { timeout: 20_000 })
      .toEqual([expect.stringMatching(/Drop-frame leaves .* out/)])
    expect(await axeViolations(page)).toEqual([])
    await field('Frames').selectOption('25')
    await field('First frame').fill('14:41:00:00')
    await field('Length').fill('8 s')
    await field('Begins in the video').fill('1 min')
    await saved()
    await page.getByText('no take of the log').waitFor()
  }, 90_000)

  it('chapters play in Chromium as a strict parser reads them', async () => {
    const shoot = await (await page.request.get(edit.replace('/shoots/', '/api/shoots/').replace('/edit', ''))).json()
    const clips = [
      clip('A001', '12:50:00:00', { in: '0 s', length: '6 min' }),
      clip('B001', '12:59:12:00', { camera: 'B', in: '6 min', length: '3 min' }),
      clip('A002', '15:29:00:00', { in: '9 min', length: '5 min' }),
      clip('A003', '14:41:00:00', { length: '8 s' }),
    ]
    const put = await page.request.put(edit.replace('/shoots/', '/api/shoots/').replace('/edit', ''), {
      data: { writeId: 'chapters-test-2', baseVersion: shoot.version, document: { ...shoot.document, clips } },
    })
    expect(put.ok(), await put.text()).toBe(true)
    const read = cuesOf(await file('chapters.vtt'), 'chapters')
    expect(read.map(({ startTime, text }) => [startTime, text])).toEqual([
      [0, 'Opening, to camera at the gate'],
      [360, 'Meat on'],
      [540, 'First slice'],
    ])
    await page.goto(edit)
    const played = await page.evaluate(
      (source) =>
        new Promise<[number, number, string][]>((resolve, reject) => {
          const video = document.createElement('video')
          const track = Object.assign(document.createElement('track'), { kind: 'chapters', src: source })
          track.onload = () =>
            resolve([...(track.track.cues ?? [])].map((cue) => [cue.startTime, cue.endTime, (cue as VTTCue).text]))
          track.onerror = () => reject(new Error('the track did not load'))
          video.append(track)
          document.body.append(video)
          track.track.mode = 'hidden'
        }),
      `${edit}/chapters.vtt`,
    )
    expect(played).toEqual(read.map(({ startTime, endTime, text }) => [startTime, endTime, text]))
    expect(cuesOf(await file('captions.vtt')).length).toBeGreaterThan(3)
    expect(await file('takes.csv')).toContain('A002,15:29:00:00,15:34:00:00')
  }, 60_000)

  it('the overlay comes as a zip with a picture for each frame, and says why where it cannot', async () => {
    const zip = await page.request.get(`${edit}/overlay.zip?clip=A003&size=640x360`)
    const names = Object.keys(unzipSync(await zip.body()))
    expect(names.filter((name) => name.endsWith('.png'))).toHaveLength(200)
    const early = await page.request.get(`${edit}/overlay.zip?clip=A001`)
    expect([early.status(), (await early.json()).detail]).toEqual([
      422,
      expect.stringMatching(/before the meat went on/),
    ])
    expect(await file('overlay.svg?clip=A003')).toContain('40 °C')
  }, 60_000)

  it('a rehearsed day is invented in every file', async () => {
    for (const name of ['chapters.vtt', 'captions.vtt', 'takes.csv'])
      expect(await file(`${name}?day=rehearsed`), name).toMatch(/nvented readings/)
    await page.goto(`${edit}/continuity?day=rehearsed`)
    await page
      .getByText(/Invented readings/)
      .first()
      .waitFor()
    expect(await axeViolations(page)).toEqual([])
  }, 120_000)
})
