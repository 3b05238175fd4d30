/**
 * The pages in a real browser: Debian's Chromium without a window, driven through WebDriver, against the packaged service with the sample herd.
 *
 * <p>Entry: {@link org.pailbook.records.browser.Browser#startOrSkip} and {@link org.pailbook.records.browser.ShownService#withSampleHerd}. Every page has a
 * line in {@link org.pailbook.records.browser.PageAddresses}, which the table-driven test walks. Nothing is downloaded: without {@code chromium} and
 * {@code chromedriver} on the machine the tests are skipped and say so; {@code .ci/run} installs them.
 */
package org.pailbook.records.browser;
