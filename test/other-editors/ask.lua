-- Opens a file in a Neovim without a window, waits for the server's findings, asks for a hover, prints both as JSON and ends.
-- Arguments: the file, then line and column (from 0) of what to hover over.
local path, line, column = vim.env.ASK_FILE, tonumber(vim.env.ASK_LINE), tonumber(vim.env.ASK_COLUMN)
vim.cmd("edit " .. vim.fn.fnameescape(path))

local found = vim.wait(20000, function() return #vim.diagnostic.get(0) > 0 end, 50)
local findings = {}
for _, one in ipairs(found and vim.diagnostic.get(0) or {}) do
  table.insert(findings, { line = one.lnum, message = one.message, code = one.code })
end

local position = { textDocument = vim.lsp.util.make_text_document_params(), position = { line = line, character = column } }
local answers = vim.lsp.buf_request_sync(0, "textDocument/hover", position, 20000) or {}
local hover
for _, answer in pairs(answers) do
  if answer.result then hover = answer.result.contents.value end
end

io.stdout:write(vim.json.encode({ filetype = vim.bo.filetype, findings = findings, hover = hover or vim.NIL }) .. "\n")
vim.cmd("qall!")
