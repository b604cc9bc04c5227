" Tells ALE how to run fascicle. Used by the files below `ale_linters/`.

let g:fascicle_command = get(g:, 'fascicle_command', 'fascicle')

" The course that a buffer belongs to: the folder of its `fascicle.toml`, else its own folder.
function! fascicle#Root(buffer) abort
  let l:settings = ale#path#FindNearestFile(a:buffer, 'fascicle.toml')
  return empty(l:settings) ? expand('#' . a:buffer . ':p:h') : fnamemodify(l:settings, ':h')
endfunction

function! fascicle#Define(filetype) abort
  call ale#linter#Define(a:filetype, {
        \ 'name': 'fascicle',
        \ 'lsp': 'stdio',
        \ 'executable': {buffer -> g:fascicle_command},
        \ 'command': '%e serve',
        \ 'project_root': function('fascicle#Root'),
        \ })
endfunction

" Shows the branch tree of what is under the cursor in the preview window.
function! fascicle#Tree() abort
  let l:before = strpart(getline('.'), 0, col('.') - 1)
  call ale#lsp_linter#SendRequest(bufnr(''), 'fascicle', [0, 'fascicle/tree', {
        \ 'textDocument': {'uri': 'file://' . ale#uri#Encode(expand('%:p'))},
        \ 'position': {'line': line('.') - 1, 'character': strchars(l:before)},
        \ }], function('s:ShowTree'))
endfunction

function! s:ShowTree(response) abort
  let l:tree = get(a:response, 'result', v:null)
  if type(l:tree) isnot v:t_dict
    echomsg 'fascicle: put the cursor into the name of a nerve, a muscle or a joint'
    return
  endif
  call ale#preview#Show(split(l:tree.text, "\n"), {'filetype': 'fascicletree', 'stay_here': 1})
endfunction
