import { chromium } from 'playwright-core'
import { chromiumAt } from './browser'
import { startApp } from './server'

/** Before the first journey: one app and one browser for all that need none of their own. Each makes its own shoots. */
export default async function setup() {
  const [app, browser] = await Promise.all([startApp(), chromiumAt().then((options) => chromium.launchServer(options))])
  const { address, folder, pid } = app
  process.env.EMBERSLATE_APP = JSON.stringify({ address, folder, pid })
  process.env.EMBERSLATE_BROWSER = browser.wsEndpoint()
  return async () => {
    await browser.close()
    await app.stop()
  }
}
