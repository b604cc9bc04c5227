;;; fascicle.el --- Course texts of anatomy: cards, completion, findings  -*- lexical-binding: t; -*-

;; Package-Requires: ((emacs "26.3"))
;; SPDX-License-Identifier: MIT OR Apache-2.0

;;; Commentary:

;; Tells the language client of Emacs where the server is.  Eglot (part of Emacs from 29 on) and lsp-mode are served;
;; whichever is loaded takes it.  If `markdown-mode' is not installed, a plain mode for Markdown files is set up, since a
;; language client needs a major mode to go by.
;;
;; `fascicle-tree' shows the branch tree of what is at point beside the text, and follows point.

;;; Code:

(require 'subr-x)

(defgroup fascicle nil
  "Course texts of anatomy."
  :group 'text)

(defcustom fascicle-command '("fascicle" "serve")
  "The server and its arguments."
  :type '(repeat string)
  :group 'fascicle)

(define-derived-mode fascicle-text-mode text-mode "Course"
  "Plain mode for course texts where no mode for Markdown is installed.")

(define-derived-mode fascicle-captions-mode text-mode "Captions"
  "Plain mode for captions of a lecture.")

(add-to-list 'auto-mode-alist '("\\.\\(?:srt\\|vtt\\)\\'" . fascicle-captions-mode))
(unless (or (fboundp 'markdown-mode) (locate-library "markdown-mode"))
  (add-to-list 'auto-mode-alist '("\\.\\(?:md\\|markdown\\|mdx\\|qmd\\|rmd\\)\\'" . fascicle-text-mode)))

(defconst fascicle-modes '(markdown-mode gfm-mode fascicle-text-mode fascicle-captions-mode)
  "Major modes of course texts.")

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (dolist (mode fascicle-modes)
    (add-to-list 'eglot-server-programs (cons mode fascicle-command))))

(declare-function lsp-register-client "ext:lsp-mode")
(declare-function make-lsp-client "ext:lsp-mode")
(declare-function lsp-stdio-connection "ext:lsp-mode")
(defvar lsp-language-id-configuration)
(with-eval-after-load 'lsp-mode
  (add-to-list 'lsp-language-id-configuration '(fascicle-text-mode . "markdown"))
  (add-to-list 'lsp-language-id-configuration '(fascicle-captions-mode . "captions"))
  (lsp-register-client
   (make-lsp-client :new-connection (lsp-stdio-connection (lambda () fascicle-command))
                    :major-modes fascicle-modes
                    :add-on? t
                    :server-id 'fascicle)))

;;; The branch tree

(declare-function eglot-current-server "ext:eglot")
(declare-function eglot--TextDocumentPositionParams "ext:eglot")
(declare-function eglot--lsp-position-to-point "ext:eglot")
(declare-function eglot-lsp-position-to-point "ext:eglot")
(declare-function jsonrpc-async-request "ext:jsonrpc")
(declare-function lsp-request-async "ext:lsp-mode")
(declare-function lsp--text-document-position-params "ext:lsp-mode")
(declare-function lsp--position-to-point "ext:lsp-mode")

(defconst fascicle-tree-buffer "*fascicle: branch tree*")

(defvar fascicle--tree nil "What the server said of the tree that is shown.")
(defvar fascicle--source nil "The buffer that the tree is of.")
(defvar fascicle--timer nil "Runs while point rests.")

(defvar fascicle-tree-mode-map
  (let ((map (make-sparse-keymap)))
    (define-key map (kbd "RET") #'fascicle-tree-go)
    (define-key map [double-mouse-1] #'fascicle-tree-go)
    map))

(define-derived-mode fascicle-tree-mode special-mode "Branches"
  "The branch tree of a nerve.
RET goes to where the text names the structure of a line first, or to its entry."
  (setq truncate-lines t))

(defun fascicle--get (object key)
  "Value of KEY in OBJECT, as either client reads JSON."
  (if (hash-table-p object) (gethash key object) (plist-get object (intern (concat ":" key)))))

(defun fascicle--client ()
  "The client of this buffer, if it is served."
  (cond ((and (fboundp 'eglot-current-server) (eglot-current-server)) 'eglot)
        ((bound-and-true-p lsp-mode) 'lsp-mode)))

(defun fascicle--place ()
  "Where point is, as the server is told."
  (if (eq (fascicle--client) 'eglot) (eglot--TextDocumentPositionParams) (lsp--text-document-position-params)))

(defun fascicle--ask (method parameters done)
  "Ask the server for METHOD with PARAMETERS; call DONE with the answer."
  (if (eq (fascicle--client) 'eglot)
      (jsonrpc-async-request (eglot-current-server) (intern (concat ":" method)) parameters
                             :success-fn done :error-fn #'ignore)
    (lsp-request-async method parameters done :mode 'detached :error-handler #'ignore)))

(defun fascicle--point (position)
  "The place in this buffer that POSITION of the protocol means."
  (cond ((not (eq (fascicle--client) 'eglot)) (lsp--position-to-point position))
        ((fboundp 'eglot--lsp-position-to-point) (eglot--lsp-position-to-point position))
        (t (eglot-lsp-position-to-point position))))

(defun fascicle--show (tree)
  "Show TREE in the panel."
  (setq fascicle--tree tree)
  (with-current-buffer (get-buffer-create fascicle-tree-buffer)
    (let ((inhibit-read-only t)
          (lines (split-string (string-trim (fascicle--get tree "text")) "\n"))
          (ids (append (fascicle--get tree "lines") nil))
          here)
      (erase-buffer)
      (dolist (line lines)
        (let ((id (pop ids)) (start (point)))
          (insert line "\n")
          (when (stringp id)
            (add-text-properties start (1- (point)) (list 'fascicle-id id 'mouse-face 'highlight)))
          (when (equal id (fascicle--get tree "id"))
            (setq here start)
            (add-text-properties start (1- (point)) '(face bold)))))
      (goto-char (or here (point-min)))
      (let ((window (get-buffer-window nil t)))
        (when window (set-window-point window (point)))))))

(defun fascicle--read-tree (buffer)
  "Take the tree of what is at point of BUFFER into the panel.
Where nothing is named, the last tree stays."
  (when (and (buffer-live-p buffer) (get-buffer-window fascicle-tree-buffer t))
    (with-current-buffer buffer
      (fascicle--ask "fascicle/tree" (fascicle--place)
                     (lambda (tree)
                       (when tree
                         (setq fascicle--source buffer)
                         (fascicle--show tree)))))))

(defun fascicle--follow ()
  "After a command: once point rests, show the tree of what is there."
  (cond ((not (get-buffer fascicle-tree-buffer)) (remove-hook 'post-command-hook #'fascicle--follow))
        ((fascicle--client)
         (when fascicle--timer (cancel-timer fascicle--timer))
         (setq fascicle--timer (run-with-timer 0.12 nil #'fascicle--read-tree (current-buffer))))))

;;;###autoload
(defun fascicle-tree ()
  "Show the branch tree of what is at point beside the text, and follow point."
  (interactive)
  (unless (fascicle--client) (user-error "Fascicle does not run in this buffer"))
  (let ((buffer (current-buffer)))
    (unless (get-buffer fascicle-tree-buffer)
      (with-current-buffer (get-buffer-create fascicle-tree-buffer)
        (fascicle-tree-mode)
        (let ((inhibit-read-only t)) (insert "Put point into the name of a nerve, a muscle or a joint."))))
    (display-buffer-in-side-window (get-buffer fascicle-tree-buffer) '((side . right) (window-width . 46)))
    (add-hook 'post-command-hook #'fascicle--follow)
    (fascicle--read-tree buffer)))

(defun fascicle--show-entry (entry)
  "Show the document of ENTRY, to be read only."
  (let ((buffer (get-buffer-create (format "*fascicle: %s*" (fascicle--get entry "id")))))
    (with-current-buffer buffer
      (let ((inhibit-read-only t))
        (erase-buffer)
        (insert (fascicle--get entry "text"))
        ;; Without its hooks, so that no client takes it for a text of the course.
        (delay-mode-hooks (if (fboundp 'markdown-mode) (markdown-mode) (fascicle-text-mode)))
        (goto-char (point-min))
        (set-buffer-modified-p nil)
        (view-mode 1)))
    (pop-to-buffer buffer '(display-buffer-use-some-window))))

(defun fascicle-tree-go ()
  "Go to where the text names the structure of this line first, or to its entry."
  (interactive)
  (let* ((id (get-text-property (point) 'fascicle-id))
         (mention (and id (fascicle--get (fascicle--get fascicle--tree "mentions") id))))
    (unless id (user-error "No structure on this line"))
    (if mention
        (progn
          (pop-to-buffer fascicle--source)
          (goto-char (fascicle--point (fascicle--get mention "start"))))
      (with-current-buffer fascicle--source
        (fascicle--ask "fascicle/entry" (list :id id :textDocument (plist-get (fascicle--place) :textDocument))
                       #'fascicle--show-entry)))))

(declare-function markdown-mode "ext:markdown-mode")

(provide 'fascicle)
;;; fascicle.el ends here
