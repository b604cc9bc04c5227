" Read by Vim as it starts: what ALE alone does not offer.

command! FascicleTree call fascicle#Tree()

augroup fascicle
  autocmd!
  " Vim's own settings for Markdown take this key for tags of HTML.
  autocmd FileType markdown,text setlocal omnifunc=ale#completion#OmniFunc
augroup END
