import '../look/type.css'
import '../look/tokens.css'
import '../look/sheet.css'
import { mount } from 'svelte'
import App from './App.svelte'

const target = document.getElementById('app')
if (!target) throw new Error('No place for the program in its page')
mount(App, { target })
