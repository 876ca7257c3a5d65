/** The words round the report: its own are in `report`. */
export const reportPanel = {
  title: 'The report',
  lead: 'A4, on white, with the plan as lines that stay sharp. What you write here stands in it.',
  print: 'Print, or save as PDF',
  saveFile: 'Keep a file of this home',
  preparedFor: 'Prepared for',
  by: 'By',
  address: 'Address',
  date: 'Date, like 2026-03-02',
  purpose: 'Purpose',
  findings: 'What was found',
  advice: 'Advice',
  cautions: 'Cautions, printed with it',
  notReady: 'The report is still being fetched. Close the print window and print again in a moment.',
  preview: 'Pages of the report',
};
