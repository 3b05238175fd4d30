package org.pailbook.records.page;

import java.util.List;

/**
 * The order of the sheet as somebody writes it down.
 *
 * @param tags of the cows in milk, one a line, in the order they now stand in
 * @param unknown lines just sent that name no cow in milk
 */
record WeighDayOrderPage(Shown shown, boolean mayWrite, String tags, int rows, List<String> unknown) {}
