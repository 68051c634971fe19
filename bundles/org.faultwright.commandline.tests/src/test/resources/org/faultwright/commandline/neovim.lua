-- Opens a text in Neovim, asks the language server what an editor asks, and writes what came of it as JSON.
local TEXT = vim.env.FAULTWRIGHT_TEXT
local PATIENCE = 30000
local told = {}

local function wait(what, come)
  if not vim.wait(PATIENCE, come, 20) then error('waited in vain: ' .. what) end
end

local function findings()
  local codes = {}
  for _, finding in ipairs(vim.diagnostic.get(0)) do
    local page = finding.user_data.lsp.codeDescription
    table.insert(codes, { code = finding.user_data.lsp.code or finding.code, line = finding.lnum + 1, message = finding.message,
      page = page and page.href })
  end
  return codes
end

local function has(code)
  return function()
    for _, finding in ipairs(findings()) do
      if finding.code == code then return true end
    end
    return false
  end
end

local function cursor(words, into)
  for number, line in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, true)) do
    local at = line:find(words, 1, true)
    if at then
      vim.api.nvim_win_set_cursor(0, { number, at - 1 + (into or 0) })
      return
    end
  end
  error('not in the text: ' .. words)
end

-- the name of this field depends on the version of Neovim
local function failure(answer)
  return answer.err or answer.error
end

local function asked(method, more)
  local parameters = vim.tbl_extend('force', vim.lsp.util.make_position_params(0, 'utf-16'), more or {})
  for _, answer in pairs(vim.lsp.buf_request_sync(0, method, parameters, PATIENCE) or error(method .. ': no answer')) do
    if failure(answer) then error(method .. ': ' .. failure(answer).message) end
    return answer.result
  end
end

local function text()
  return table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, true), '\n') .. '\n'
end

local function typed(keys)
  vim.api.nvim_feedkeys(vim.api.nvim_replace_termcodes(keys, true, false, true), 'xt', false)
end

local function work()
  vim.cmd('edit ' .. vim.fn.fnameescape(TEXT))
  vim.bo.expandtab, vim.bo.shiftwidth = true, 4
  -- Neovim keeps the address of a page for whoever opens it, and does not say so by itself
  local able = vim.lsp.protocol.make_client_capabilities()
  able.textDocument.publishDiagnostics = vim.tbl_extend('force', able.textDocument.publishDiagnostics or {}, { codeDescriptionSupport = true })
  local client = vim.lsp.start_client({
    capabilities = able,
    name = 'faultwright', cmd = vim.fn.json_decode(vim.env.FAULTWRIGHT_SERVE), root_dir = vim.fn.fnamemodify(TEXT, ':h'),
    workspace_folders = { { uri = vim.uri_from_fname(vim.fn.fnamemodify(TEXT, ':h')), name = 'bench' } },
  })
  vim.lsp.buf_attach_client(0, client)

  wait('first findings', has('unused-declaration'))
  told.opened = findings()

  -- a wrong unit, key by key, and taken back
  cursor('24 V +/- 5 %', 3)
  typed('rA')
  wait('the wrong unit', has('wrong-dimension'))
  told.typed = findings()
  typed('u')
  wait('the right unit again', function() return not has('wrong-dimension')() end)

  cursor('within  -> Quiet', 11)
  typed('C')
  local names = {}
  local complete = asked('textDocument/completion')
  for _, one in ipairs(complete.items or complete) do table.insert(names, one.label) end
  told.completed = names
  typed('u')

  cursor('using Meter', 7)
  told.hover = asked('textDocument/hover').contents.value
  local places = asked('textDocument/definition')
  local place = places[1] or places
  told.went = { file = vim.fn.fnamemodify(vim.uri_to_fname(place.uri or place.targetUri), ':t'), line = (place.range or place.targetSelectionRange).start.line + 1 }

  cursor('-> Volts', 4)
  vim.lsp.util.apply_workspace_edit(asked('textDocument/rename', { newName = 'Rail' }), 'utf-16')
  told.renamed = text()

  wait('findings of the renamed text', has('unused-declaration'))
  cursor('Spare')
  local line = vim.api.nvim_win_get_cursor(0)[1] - 1
  local there = {}
  for _, finding in ipairs(vim.diagnostic.get(0)) do
    if finding.lnum == line then table.insert(there, finding.user_data.lsp.range and finding.user_data.lsp or {
      range = { start = { line = finding.lnum, character = finding.col }, ['end'] = { line = finding.end_lnum, character = finding.end_col } },
      message = finding.message, code = finding.code or finding.user_data.lsp.code, severity = finding.severity, source = finding.source }) end
  end
  local actions = asked('textDocument/codeAction', { range = there[1].range, context = { diagnostics = there } })
  told.fix = actions[1].title
  vim.lsp.util.apply_workspace_edit(actions[1].edit, 'utf-16')
  told.fixed = text()
  wait('findings of the mended text', function() return not has('unused-declaration')() end)
  told.after = findings()

  cursor('check Listen')
  typed('I        <Esc>')
  vim.lsp.buf.formatting_sync({ tabSize = 4, insertSpaces = true }, PATIENCE)
  told.formatted = text()

  -- of what was never offered the editor is told, and goes on
  local _, refusal = next(vim.lsp.buf_request_sync(0, 'textDocument/moniker', vim.lsp.util.make_position_params(0, 'utf-16'), PATIENCE))
  told.refused = failure(refusal).code

  vim.lsp.stop_client(client)
  wait('the goodbye', function() return vim.lsp.client_is_stopped(client) end)
end

local good, broken = pcall(work)
if not good then told.failure = tostring(broken) end
vim.fn.writefile({ vim.fn.json_encode(told) }, vim.env.FAULTWRIGHT_TOLD)
vim.cmd('qall!')
