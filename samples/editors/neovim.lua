-- Bellcrank in Neovim 0.7 or later: put this into init.lua. `bellcrank` has to be on the path; vim.g.bellcrank_command names
-- another command.
local function start(buffer)
  local config = {
    name = "bellcrank",
    cmd = vim.g.bellcrank_command or { "bellcrank", "serve", "--stdio" },
    root_dir = vim.fn.getcwd(),
  }
  if vim.lsp.start then
    vim.lsp.start(config, { bufnr = buffer })
  else
    -- Before 0.8 a client is kept by hand, one for all buffers.
    vim.g.bellcrank_client = vim.g.bellcrank_client or vim.lsp.start_client(config)
    vim.lsp.buf_attach_client(buffer, vim.g.bellcrank_client)
  end
end

vim.api.nvim_create_autocmd({ "BufRead", "BufNewFile" }, {
  pattern = "*.crank",
  callback = function(event)
    vim.bo[event.buf].filetype = "bellcrank"
    vim.bo[event.buf].commentstring = "# %s"
    start(event.buf)
    local key = function(keys, action) vim.keymap.set("n", keys, action, { buffer = event.buf }) end
    key("K", vim.lsp.buf.hover) -- figures of what is under the cursor
    key("gd", vim.lsp.buf.definition)
    key("<leader>a", vim.lsp.buf.code_action) -- fixes
    key("<leader>r", vim.lsp.buf.rename)
  end,
})
