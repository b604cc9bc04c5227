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
